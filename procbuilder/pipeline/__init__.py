"""One short module a command; the only place that joins the rooms."""
