# The demo shelf. Everything in it is invented.

demo-title = Demo
demo-note = This is the demo shelf. Every piece in it is invented; what you change is gone when you close the app.
