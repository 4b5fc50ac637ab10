# Only what differs from en-GB.
