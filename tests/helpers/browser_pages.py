"""What the browser's tests share besides fixtures."""

UNFOLD = "() => { for (const one of document.querySelectorAll('.part')) one.open = true }"
"""Shows the questions that a phone folds away."""
