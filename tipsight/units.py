"""Units of length that anglers speak in, in metres and millimetres."""

YARD_M = 0.9144
"""One yard. [m] (international yard and pound agreement 1959, exact; so are the next two)"""
FOOT_M = 0.3048
"""One foot. [m]"""
INCH_M = 0.0254
"""One inch. [m]"""
INCH_MM = 25.4
"""One inch. [mm]"""
