# Only what differs from en-GB.

wall-centre = Center of mass
