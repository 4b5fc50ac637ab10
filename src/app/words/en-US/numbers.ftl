# Only what differs from en-GB. Units keep their signs; { -spigot } takes its US word by itself.
