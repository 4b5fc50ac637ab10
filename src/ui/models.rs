//! Models: keeps the rows of a Slint list in step with new ones without making the list anew, so that what has the
//! focus keeps it and nothing jumps.

use std::rc::Rc;

use slint::{Model, ModelRc, VecModel};

/// Gives a list these rows. The list that is there is changed row by row; one that cannot be changed is replaced.
pub fn fill<T: Clone + PartialEq + 'static>(list: ModelRc<T>, rows: Vec<T>) -> ModelRc<T> {
    let Some(model) = list.as_any().downcast_ref::<VecModel<T>>() else {
        return ModelRc::from(Rc::new(VecModel::from(rows)));
    };
    while model.row_count() > rows.len() {
        model.remove(model.row_count() - 1);
    }
    for (place, row) in rows.into_iter().enumerate() {
        match model.row_data(place) {
            Some(old) if old == row => {}
            Some(_) => model.set_row_data(place, row),
            None => model.push(row),
        }
    }
    list
}

/// A list made of these rows.
pub fn list<T: Clone + 'static>(rows: Vec<T>) -> ModelRc<T> {
    ModelRc::from(Rc::new(VecModel::from(rows)))
}
