# Only what differs from en-GB.

error-number-negative = { $found } is below zero. Type the { $what } without the minus sign, from { $low } to { $high }.
