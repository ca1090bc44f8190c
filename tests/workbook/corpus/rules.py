"""Values that follow the format's documentation where LibreOffice gives another: formula -> (value, reason)."""

rules = {}
