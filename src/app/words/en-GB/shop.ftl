# The workshop: climate, units, rhythms, jaws, bars, words, about.

shop-title = Shop
shop-words = Words
shop-words-en-GB = UK
shop-words-en-US = US
shop-units = Units
