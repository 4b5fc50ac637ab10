//! The drawn pictures of the demo: each on its flaw or its piece, here, measured where a crack is drawn, and quick.

use std::time::Instant;

use evenwall_app::app::App;
use evenwall_app::demo;
use evenwall_app::shelf_store::ShelfStore;
use evenwall_piece::ids::FlawId;
use evenwall_piece::photo::PhotoOn;
use evenwall_shelf::throwaway::ThrowawayDisk;

use super::{DAYS, by_mark, moment};

#[test]
fn the_drawings_hang_on_flaws_and_pieces_and_a_crack_has_grown() {
    let now = moment(DAYS[0]);
    let temp = tempfile::tempdir().unwrap();
    let (shelf, device) = (temp.path().join("s"), temp.path().join("d"));
    let disk = std::sync::Arc::new(ThrowawayDisk::default());
    let mut store = ShelfStore::open_on(disk, &shelf, &device, [1; 16], Box::new(|| 1)).unwrap();
    let began = Instant::now();
    demo::fill(&mut store, now).unwrap();
    println!("the demo, its pictures drawn: {:?}", began.elapsed());
    let app = App::open(Box::new(store), true, now).unwrap();

    let photos = app
        .pieces()
        .flat_map(|p| p.photos.iter().map(move |photo| (p, photo)));
    let mut n = 0;
    for (piece, photo) in photos {
        n += 1;
        if let PhotoOn::Flaw(flaw) = &photo.note.on {
            assert!(piece.flaw(flaw).is_some(), "{}: {flaw}", piece.id);
        }
        let tile = app.photos_tile(&piece.id, &photo.note.photo, now).unwrap();
        assert_eq!(tile.note, "", "it is here");
        assert!(!tile.thumb.is_empty() && !tile.path.is_empty());
    }
    assert_eq!(n, 9);
    assert!(by_mark(&app, "K07").portrait().is_some());

    let j24 = by_mark(&app, "J24");
    let on = PhotoOn::Flaw(FlawId::new("ring-shake-1").unwrap());
    let lengths: Vec<String> = app
        .photos_tiles(&j24.id, &on, now)
        .into_iter()
        .map(|t| t.length)
        .collect();
    assert_eq!(lengths, ["35\u{a0}mm", "42\u{a0}mm"]);
    assert!(app.chrome_view(now).demo.unwrap().contains("drawn"));
}
