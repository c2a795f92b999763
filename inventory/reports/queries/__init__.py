"""One module for each report: what it reads, in a constant number of SQL statements."""
