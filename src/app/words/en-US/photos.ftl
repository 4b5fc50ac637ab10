# Photos, American. No word differs.
