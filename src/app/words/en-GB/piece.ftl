# One piece.

piece-checklist = Checklist
piece-stage-path = Stages
