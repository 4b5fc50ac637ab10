//! Just enough complex arithmetic for plane elasticity.

use std::f64::consts::TAU;
use std::ops::{Add, Div, Mul, Sub};

/// A complex number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Complex {
    pub re: f64,
    pub im: f64,
}

impl Complex {
    pub fn new(re: f64, im: f64) -> Self {
        Complex { re, im }
    }

    pub fn conj(self) -> Self {
        Complex::new(self.re, -self.im)
    }

    pub fn abs(self) -> f64 {
        self.re.hypot(self.im)
    }

    /// Argument in [0, 2 pi).
    pub fn turn(self) -> f64 {
        let angle = self.im.atan2(self.re);
        if angle < 0.0 { angle + TAU } else { angle }
    }

    /// Logarithm with the argument in [0, 2 pi).
    pub fn ln(self) -> Self {
        Complex::new(self.abs().ln(), self.turn())
    }

    pub fn scale(self, by: f64) -> Self {
        Complex::new(self.re * by, self.im * by)
    }
}

impl Add for Complex {
    type Output = Complex;
    fn add(self, o: Complex) -> Complex {
        Complex::new(self.re + o.re, self.im + o.im)
    }
}

impl Sub for Complex {
    type Output = Complex;
    fn sub(self, o: Complex) -> Complex {
        Complex::new(self.re - o.re, self.im - o.im)
    }
}

impl Mul for Complex {
    type Output = Complex;
    fn mul(self, o: Complex) -> Complex {
        Complex::new(
            self.re * o.re - self.im * o.im,
            self.re * o.im + self.im * o.re,
        )
    }
}

impl Div for Complex {
    type Output = Complex;
    fn div(self, o: Complex) -> Complex {
        let square = o.re * o.re + o.im * o.im;
        Complex::new(
            (self.re * o.re + self.im * o.im) / square,
            (self.im * o.re - self.re * o.im) / square,
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::f64::consts::PI;

    #[test]
    fn division_undoes_multiplication_and_arguments_run_once_round() {
        let (a, b) = (Complex::new(2.0, -3.0), Complex::new(-0.5, 4.0));
        let back = a * b / b - a;
        assert!(back.abs() < 1e-14);
        assert_eq!(Complex::new(0.0, -1.0).turn(), 1.5 * PI);
        assert!((Complex::new(-1.0, 0.0).ln().im - PI).abs() < 1e-15);
        assert_eq!(Complex::new(3.0, 4.0).abs(), 5.0);
    }
}
