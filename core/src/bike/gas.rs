//! Gas springs: a main chamber that holds the bike up and, usually, a negative one that softens the start.

/// How fast a stroke is, which decides how much heat the gas exchanges on the way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Law {
    /// Minutes: the gas keeps the temperature of the leg, p V is constant. Sag is of this kind.
    Slow,
    /// Tenths of a second: p V^n is constant with n near 1.3, starting from the slow state at this stroke in metres.
    Quick {
        /// Stroke from which the bike moves, usually ride height, m.
        from_m: f64,
    },
}

/// Exponent of a slow change (isothermal).
pub const SLOW_EXPONENT: f64 = 1.0;
/// Exponent of a quick stroke: between isothermal and the 1.4 of no heat exchange at all, since the walls are
/// near. Common practice puts it at 1.2 to 1.35.
pub const QUICK_EXPONENT: f64 = 1.3;

/// A closed gas column in a straight bore, described by its area and its length at full extension.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Column {
    /// Piston area, m².
    pub area_m2: f64,
    /// Volume at full extension divided by the area, m. Must be longer than the stroke.
    pub length_m: f64,
    /// Polytropic exponent of slow changes.
    pub slow_exponent: f64,
    /// Polytropic exponent of quick strokes.
    pub quick_exponent: f64,
}

impl Column {
    /// Absolute pressure in Pa of gas that stands at `extended_pa` absolute at full extension.
    ///
    /// A column squeezed to nothing is held at a thousandth of its length, which only a stroke beyond the
    /// bump stop could ask for.
    pub fn pressure_pa(&self, extended_pa: f64, stroke_m: f64, law: Law) -> f64 {
        let left = |s: f64| (self.length_m - s).max(1e-3 * self.length_m);
        let slow = |s: f64| extended_pa * polytropic(self.length_m / left(s), self.slow_exponent);
        match law {
            Law::Slow => slow(stroke_m),
            Law::Quick { from_m } => {
                slow(from_m) * polytropic(left(from_m) / left(stroke_m), self.quick_exponent)
            }
        }
    }
}

/// `ratio` to the power of `exponent`, without the power function where it is not needed.
fn polytropic(ratio: f64, exponent: f64) -> f64 {
    if (exponent - 1.0).abs() < f64::EPSILON {
        ratio
    } else {
        libm::pow(ratio, exponent)
    }
}

/// What pushes against the main chamber near full extension.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Negative {
    /// Nothing: the leg tops out against its full charge.
    Absent,
    /// A short coil spring.
    Coil {
        /// Rate, N/m.
        rate_n_per_m: f64,
        /// Stroke over which it pushes, m.
        length_m: f64,
    },
    /// A chamber that fills itself from the main one through a port near full extension.
    Chamber {
        /// Annular area it acts on, m².
        area_m2: f64,
        /// Volume at full extension divided by that area, m.
        length_m: f64,
        /// Stroke at which the port closes, m. Below it both chambers stand at one pressure. 0 when the port does not pass.
        port_m: f64,
        /// Its absolute pressure over the main chamber's where the port closes: 1 when they have levelled.
        fill: f64,
    },
}

/// A gas spring in one fork leg.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GasSpring {
    /// The main chamber.
    pub main: Column,
    /// What acts against it.
    pub negative: Negative,
}

impl GasSpring {
    /// Force in N along the leg at `stroke_m`, charged to `charge_pa` absolute at full extension, in ambient air
    /// of `ambient_pa`: F = `A_m` (`p_m` − `p_amb`) − `A_n` (`p_n` − `p_amb`), ideal gas.
    ///
    /// Beyond the port the negative chamber is shut and expands on its own. In a quick stroke back through the
    /// port its pressure meets the main chamber's again at full extension, linearly over the port's length:
    /// the flow through the port itself is not modelled.
    pub fn force_n(&self, charge_pa: f64, ambient_pa: f64, stroke_m: f64, law: Law) -> f64 {
        let main_pa = self.main.pressure_pa(charge_pa, stroke_m, law);
        let main_n = self.main.area_m2 * (main_pa - ambient_pa);
        let against_n = match self.negative {
            Negative::Absent => 0.0,
            Negative::Coil {
                rate_n_per_m,
                length_m,
            } => rate_n_per_m * (length_m - stroke_m).max(0.0),
            Negative::Chamber {
                area_m2,
                length_m,
                port_m,
                fill,
            } => {
                let shut_pa =
                    |s: f64| fill * self.shut_negative_pa(charge_pa, s, law, length_m, port_m);
                let negative_pa = if stroke_m >= port_m {
                    shut_pa(stroke_m)
                } else {
                    let at_port = shut_pa(port_m) - self.main.pressure_pa(charge_pa, port_m, law);
                    main_pa + at_port * (stroke_m / port_m).max(0.0)
                };
                area_m2 * (negative_pa - ambient_pa)
            }
        };
        main_n - against_n
    }

    /// Absolute pressure of the negative chamber with its port shut, Pa.
    fn shut_negative_pa(
        &self,
        charge_pa: f64,
        stroke_m: f64,
        law: Law,
        length_m: f64,
        port_m: f64,
    ) -> f64 {
        let volume = |s: f64| length_m + s;
        let slow = |s: f64| {
            self.main.pressure_pa(charge_pa, port_m, Law::Slow)
                * polytropic(volume(port_m) / volume(s), self.main.slow_exponent)
        };
        match law {
            Law::Slow => slow(stroke_m),
            Law::Quick { from_m } => {
                // A stroke that starts below the port shuts the chamber on its way, at the pressure found there.
                let (start_m, start_pa) = if from_m >= port_m {
                    (from_m, slow(from_m))
                } else {
                    (port_m, self.main.pressure_pa(charge_pa, port_m, law))
                };
                start_pa * polytropic(volume(start_m) / volume(stroke_m), self.main.quick_exponent)
            }
        }
    }
}
