# Today, the bag round and the weigh round.

today-title = Today
today-overdue = Overdue
today-due = Today
today-coming = Coming up
today-longest-unlooked = Longest without a look
today-probably-ready = Probably ready
today-bag-round = Bag round
today-weigh-round = Weigh round
