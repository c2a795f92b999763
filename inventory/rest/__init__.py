"""REST plumbing shared by the apps."""
