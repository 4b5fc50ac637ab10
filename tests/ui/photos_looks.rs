//! Photos as they look: pictures of every state at every size.

use evenwall_app::route::Page;
use evenwall_photo::drawing::Subject;
use evenwall_piece::photo::PhotoOn;

use crate::photos_desk::{Desk, drawing, id, on_flaw};

#[test]
fn pictures_of_photos_on_a_flaw() {
    let desk = Desk::with_two();
    desk.bench.pictures_of("photos-flaw");
    desk.bench.touch("Back");
    desk.open(Page::Flaws(id()));
    desk.bench.pictures_of("photos-flaws-list");
    desk.open(Page::Photos(id(), on_flaw()));
    desk.bench.pictures_of("photos-page");
    desk.open(Page::Photos(id(), PhotoOn::Finished));
    desk.bench.pictures_of("photos-empty");
}

#[test]
fn pictures_of_the_newest_pictures_and_of_an_import() {
    let desk = Desk::new();
    desk.takes("IMG_3.jpg", &drawing(Subject::Check(20.0)), 1);
    desk.takes("IMG_2.jpg", &drawing(Subject::Knot(14.0)), 4);
    desk.takes("IMG_1.heic", b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", 60);
    desk.takes("IMG_0.jpg", &drawing(Subject::Bark(20.0)), 3000);
    desk.bench.touch("Take from newest pictures");
    desk.bench.settle();
    desk.bench.pictures_of("photos-newest");
    desk.bench.touch("Several");
    desk.bench.touch("IMG_3.jpg, 08:41");
    desk.bench.touch("IMG_2.jpg, 08:38");
    desk.bench.pictures_of("photos-newest-several");
    desk.bench.touch("Add 2 photos");
    desk.bench.pictures_of("photos-importing");
}

#[test]
fn pictures_of_one_photo_and_of_two() {
    let desk = Desk::with_two();
    desk.bench.resize(390.0, 844.0, 1.0);
    desk.bench.touch("Compare two");
    desk.bench.pictures_of("photos-compare");
    desk.bench.touch("Back");
    desk.bench.touch("Fri 13 Mar, 08:42");
    desk.bench.pictures_of("photos-one");
    desk.bench.touch("Mark and measure");
    desk.tap(0.45, 0.3);
    desk.bench.touch("Known length");
    desk.tap(120.0 / 640.0, 440.0 / 480.0);
    desk.tap(520.0 / 640.0, 440.0 / 480.0);
    desk.bench.write("Known length", "100");
    desk.bench.pictures_of("photos-marking-scale");
    desk.bench.touch("Crack");
    desk.tap(0.5, 0.34);
    desk.tap(0.5, 0.556);
    desk.bench.pictures_of("photos-marking");
    desk.bench.touch("Save what is drawn");
    desk.bench.pictures_of("photos-measured");
    desk.bench.touch("More");
    desk.bench.pictures_of("photos-more");
}
