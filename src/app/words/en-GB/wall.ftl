# Wall readings and their summary.

wall-title = Wall
wall-wanted = Wall wanted
wall-measure-section = Measure this section
wall-whole-round = Whole round
wall-thickest-less-thinnest = Thickest less thinnest
wall-leave-alone = leave alone
