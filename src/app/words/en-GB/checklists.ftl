# Checklist lines with their whys, and the cautions of each stage.

checklists-title = Checklist
