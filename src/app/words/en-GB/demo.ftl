# The demo shelf. Everything in it is invented.

