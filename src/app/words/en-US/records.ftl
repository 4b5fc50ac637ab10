# US English where it differs.
