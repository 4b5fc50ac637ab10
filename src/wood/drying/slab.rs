//! One wall as a slab of equal cells with two faces, and its implicit step.
//!
//! Finite volumes, implicit Euler, the diffusivity at a cell face is the mean of its two cells, three passes of renewal
//! (Picard) a step. What leaves through a face goes through the resistance of half a cell and of the air in series. The step
//! conserves water to rounding, cannot overshoot and is stable at any length.

/// Cells of a wall in every result of this crate.
pub const CELLS: usize = 20;
/// Passes of renewal in a step.
const PASSES: usize = 3;

/// What the water moves through.
pub(crate) trait Medium {
    /// Diffusivity, m2/s, at a moisture (fraction).
    fn diffusivity(&self, moisture: f64) -> f64;
}

/// What the faces stand in.
pub(crate) trait Skin {
    /// Moisture (fraction) the faces tend to.
    fn settling(&self) -> f64;
    /// Conductance of the air at `face` (0, 1) over a surface of moisture `surface`, m/s on a moisture scale: 0 for a sealed
    /// face, infinite for a face that is held at the settling moisture. `humidity` is kept from call to call for this face.
    fn conductance(&self, face: usize, surface: f64, humidity: &mut f64) -> f64;
}

/// The state of one wall.
#[derive(Debug, Clone)]
pub(crate) struct Slab<const N: usize> {
    now: [f64; N],
    next: [f64; N],
    surface: [f64; 2],
    next_surface: [f64; 2],
    /// Humidity in balance with the surface, a start for the next inverse.
    humidity: [f64; 2],
    /// Water that the tried step takes out through the faces, as moisture of the whole wall.
    leaving: f64,
}

impl<const N: usize> Slab<N> {
    /// A wall of even `moisture` (fraction).
    pub(crate) fn even(moisture: f64) -> Self {
        Slab {
            now: [moisture; N],
            next: [moisture; N],
            surface: [moisture; 2],
            next_surface: [moisture; 2],
            humidity: [1.0; 2],
            leaving: 0.0,
        }
    }

    /// Mean moisture now.
    pub(crate) fn mean(&self) -> f64 {
        self.now.iter().sum::<f64>() / N as f64
    }

    /// Mean of the cells, each clipped at `limit`: wetter wood has not shrunk.
    pub(crate) fn mean_below(&self, limit: f64) -> f64 {
        self.now.iter().map(|m| m.min(limit)).sum::<f64>() / N as f64
    }

    /// Moisture of the two outermost cells now.
    pub(crate) fn outer(&self) -> [f64; 2] {
        [self.now[0], self.now[N - 1]]
    }

    /// Mean moisture after the tried step.
    #[cfg(test)]
    pub(crate) fn tried_mean(&self) -> f64 {
        self.next.iter().sum::<f64>() / N as f64
    }

    /// Water leaving in the tried step through the faces, as mean moisture of the wall; the flux summed, not the difference
    /// of the means.
    pub(crate) fn leaving(&self) -> f64 {
        self.leaving
    }

    /// Takes the tried step as done.
    pub(crate) fn accept(&mut self) {
        self.now = self.next;
        self.surface = self.next_surface;
    }

    /// Tries a step of `seconds` from the state now, for a wall of `thickness` m; [`Slab::accept`] makes it so.
    pub(crate) fn attempt(
        &mut self,
        seconds: f64,
        thickness: f64,
        medium: &impl Medium,
        skin: &impl Skin,
    ) {
        let dx = thickness / N as f64;
        let across = seconds / (dx * dx);
        let settling = skin.settling();
        self.next = self.now;
        self.next_surface = self.surface;
        for _ in 0..PASSES {
            let mut d = [0.0; N];
            for (d, m) in d.iter_mut().zip(&self.next) {
                *d = medium.diffusivity(*m);
            }
            let half = [2.0 * d[0] / dx, 2.0 * d[N - 1] / dx];
            let mut air = [0.0; 2];
            let mut out = [0.0; 2];
            for face in 0..2 {
                air[face] =
                    skin.conductance(face, self.next_surface[face], &mut self.humidity[face]);
                out[face] = if air[face] > 0.0 {
                    seconds / dx / (1.0 / half[face] + 1.0 / air[face])
                } else {
                    0.0
                };
            }
            // Links between cells, as shares exchanged in the step.
            let mut link = [0.0; N];
            for i in 0..N - 1 {
                link[i] = 0.5 * across * (d[i] + d[i + 1]);
            }
            solve(&self.now, &link, out, settling, &mut self.next);
            let edge = [self.next[0], self.next[N - 1]];
            for face in 0..2 {
                self.next_surface[face] = if air[face].is_infinite() {
                    settling
                } else {
                    (half[face] * edge[face] + air[face] * settling) / (half[face] + air[face])
                };
            }
            self.leaving =
                (out[0] * (edge[0] - settling) + out[1] * (edge[1] - settling)) / N as f64;
        }
    }
}

/// Solves the tridiagonal system of one pass: eliminated from both ends to the middle, so that two chains of divisions run
/// side by side.
#[inline]
fn solve<const N: usize>(
    old: &[f64; N],
    link: &[f64; N],
    out: [f64; 2],
    settling: f64,
    new: &mut [f64; N],
) {
    let half = N / 2;
    // new[i] = part[i] + share[i] * (the neighbour towards the middle)
    let mut share = [0.0; N];
    let mut part = [0.0; N];
    let (mut left_link, mut left_share, mut left_part) = (out[0], 0.0, settling);
    let (mut right_link, mut right_share, mut right_part) = (out[1], 0.0, settling);
    for i in 0..half {
        let j = N - 1 - i;
        let (to_right, to_left) = (link[i], link[j - 1]);
        let a = 1.0 / (1.0 + to_right + left_link * (1.0 - left_share));
        let b = 1.0 / (1.0 + to_left + right_link * (1.0 - right_share));
        left_part = (old[i] + left_link * left_part) * a;
        left_share = to_right * a;
        left_link = to_right;
        right_part = (old[j] + right_link * right_part) * b;
        right_share = to_left * b;
        right_link = to_left;
        share[i] = left_share;
        part[i] = left_part;
        share[j] = right_share;
        part[j] = right_part;
    }
    let mut left = (left_part + left_share * right_part) / (1.0 - left_share * right_share);
    let mut right = right_part + right_share * left;
    new[half - 1] = left;
    new[half] = right;
    for i in (0..half - 1).rev() {
        let j = N - 1 - i;
        left = part[i] + share[i] * left;
        right = part[j] + share[j] * right;
        new[i] = left;
        new[j] = right;
    }
}
