# Only what differs from en-GB.

shop-day-example = Mar 14
shop-day-wanted = A month or a year is too little here. Write the day too, for example Mar 14.
shop-wood-example = Churchyard basswood
shop-wood-unnamed = A wood needs a name. Type one, for example churchyard basswood.
shop-about-never = It never clears a piece or a speed, and it never says that a crack will not come. That judgment is yours.
shop-about-licence = Licenses
shop-about-ours = Evenwall is free software under the MIT license.
shop-about-slint = The screens are made with Slint, used under its royalty-free license.
