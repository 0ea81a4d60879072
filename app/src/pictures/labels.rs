//! Room for words in a picture, so that no label covers another, a curve or a marking line.

/// A point in the backend's coordinates: right and down.
pub type Point = (i32, i32);

/// An upright rectangle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rect {
    /// Left edge.
    pub left: i32,
    /// Upper edge.
    pub top: i32,
    /// Right edge.
    pub right: i32,
    /// Lower edge.
    pub bottom: i32,
}

impl Rect {
    /// Whether the two share any area.
    pub fn overlaps(self, other: Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    fn contains(self, other: Self) -> bool {
        self.left <= other.left
            && self.top <= other.top
            && self.right >= other.right
            && self.bottom >= other.bottom
    }

    fn grown(self, by: i32) -> Self {
        Self {
            left: self.left - by,
            top: self.top - by,
            right: self.right + by,
            bottom: self.bottom + by,
        }
    }

    /// Whether the line from `a` to `b` touches the rectangle: cut the line at each edge in turn and see
    /// whether a piece is left (the Liang–Barsky clip).
    fn touches(self, a: Point, b: Point) -> bool {
        let (ax, ay) = (f64::from(a.0), f64::from(a.1));
        let (dx, dy) = (f64::from(b.0) - ax, f64::from(b.1) - ay);
        let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
        for (run, room) in [
            (-dx, ax - f64::from(self.left)),
            (dx, f64::from(self.right) - ax),
            (-dy, ay - f64::from(self.top)),
            (dy, f64::from(self.bottom) - ay),
        ] {
            if run == 0.0 {
                if room < 0.0 {
                    return false;
                }
            } else if run < 0.0 {
                enter = enter.max(room / run);
            } else {
                leave = leave.min(room / run);
            }
        }
        enter <= leave
    }

    /// Distance from the centre to the nearest point of a curve.
    fn distance_to(self, curve: &[Point]) -> f64 {
        let (cx, cy) = (
            f64::midpoint(f64::from(self.left), f64::from(self.right)),
            f64::midpoint(f64::from(self.top), f64::from(self.bottom)),
        );
        curve
            .iter()
            .map(|&(x, y)| {
                let (dx, dy) = (f64::from(x) - cx, f64::from(y) - cy);
                (dx * dx + dy * dy).sqrt()
            })
            .fold(f64::INFINITY, f64::min)
    }
}

/// A label that hangs on an upright line like a flag on its pole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Flag {
    /// Where the pole stands.
    pub pole: i32,
    /// How wide the words are.
    pub width: i32,
}

/// Where a flag hangs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Hung {
    /// Left edge of the words.
    pub left: i32,
    /// Row above the plot, 0 the nearest to it.
    pub lane: usize,
    /// How many rows the pole rises through: its own too where the words hang beside it, not where they sit on
    /// its top.
    pub reach: usize,
}

impl Hung {
    /// The ways to hang a flag in a lane, the plainest first: right of the pole, left of it, on top of it.
    fn ways(flag: Flag, lane: usize, (left, right): (i32, i32), gap: i32) -> [Self; 3] {
        let beside = |left: i32| Self {
            left,
            lane,
            reach: lane + 1,
        };
        let centred = (flag.pole - flag.width / 2).min(right - flag.width);
        [
            beside(flag.pole + gap),
            beside(flag.pole - gap - flag.width),
            Self {
                left: centred.max(left),
                lane,
                reach: lane,
            },
        ]
    }
}

/// Hangs every flag between `left` and `right` in as few lanes as do, so that no flag covers another flag or
/// another's pole. `gap` is kept between words and poles.
pub fn hang(flags: &[Flag], (left, right): (i32, i32), gap: i32) -> Vec<Hung> {
    (1..=flags.len())
        .find_map(|lanes| {
            let mut hung = Vec::with_capacity(flags.len());
            try_hang(flags, (left, right), gap, lanes, &mut hung).then_some(hung)
        })
        // Words wider than the whole picture cannot be kept apart by moving: one lane each is the best there is.
        .unwrap_or_else(|| {
            flags
                .iter()
                .enumerate()
                .map(|(lane, flag)| {
                    let [_, _, on_top] = Hung::ways(*flag, lane, (left, right), gap);
                    on_top
                })
                .collect()
        })
}

/// Hangs the flags after those already hung; takes back what leads nowhere.
fn try_hang(
    flags: &[Flag],
    bounds: (i32, i32),
    gap: i32,
    lanes: usize,
    hung: &mut Vec<Hung>,
) -> bool {
    let Some(flag) = flags.get(hung.len()) else {
        return true;
    };
    for lane in 0..lanes {
        for candidate in Hung::ways(*flag, lane, bounds, gap) {
            let left = candidate.left;
            let inside = left >= bounds.0 && left + flag.width <= bounds.1;
            let free = hung
                .iter()
                .zip(flags)
                .all(|(other, other_flag)| !clash(*flag, candidate, *other_flag, *other, gap));
            if inside && free {
                hung.push(candidate);
                if try_hang(flags, bounds, gap, lanes, hung) {
                    return true;
                }
                hung.pop();
            }
        }
    }
    false
}

fn clash(a: Flag, at: Hung, b: Flag, bt: Hung, gap: i32) -> bool {
    let words_meet = at.lane == bt.lane
        && at.left < bt.left + b.width + gap
        && bt.left < at.left + a.width + gap;
    let crosses = |pole: i32, pole_lane: usize, words: Hung, width: i32| {
        pole_lane >= words.lane && pole > words.left - gap && pole < words.left + width + gap
    };
    words_meet || crosses(a.pole, at.lane, bt, b.width) || crosses(b.pole, bt.lane, at, a.width)
}

/// Places along a curve at which room for its name is looked for: enough for a picture a thousand pixels wide.
const PLACES: usize = 60;

/// Finds room beside a curve for its name: above its left or below its right, clear of every curve and
/// of `taken`, as far from the other curves as it gets; upright `poles` are crossed only where nothing else is
/// free. `None` when the picture is too full.
pub fn beside_curve(
    (width, height): (i32, i32),
    own: &[Point],
    others: &[&[Point]],
    taken: &[Rect],
    poles: &[i32],
    area: Rect,
    gap: i32,
) -> Option<Rect> {
    let crosses_curve = |rect: Rect, curve: &[Point]| {
        curve
            .windows(2)
            .any(|pair| matches!(pair, [a, b] if rect.touches(*a, *b)))
    };
    let mut best: Option<(f64, Rect)> = None;
    let every = own.len().div_ceil(PLACES).max(1);
    for &(x, y) in own.iter().step_by(every) {
        let above = Rect {
            left: x - gap - width,
            top: y - gap - height,
            right: x - gap,
            bottom: y - gap,
        };
        let below = Rect {
            left: x + gap,
            top: y + gap,
            right: x + gap + width,
            bottom: y + gap + height,
        };
        for rect in [above, below] {
            let padded = rect.grown(gap / 2);
            let free = area.contains(rect)
                && !crosses_curve(padded, own)
                && !others.iter().any(|curve| crosses_curve(padded, curve))
                && !taken.iter().any(|other| other.overlaps(padded));
            if !free {
                continue;
            }
            let clearance = others
                .iter()
                .map(|curve| rect.distance_to(curve))
                .fold(f64::from(width) * 2.0, f64::min);
            let over_pole = poles
                .iter()
                .any(|&pole| pole > padded.left && pole < padded.right);
            let score = clearance - if over_pole { f64::from(width) } else { 0.0 };
            if best.is_none_or(|(so_far, _)| score > so_far) {
                best = Some((score, rect));
            }
        }
    }
    best.map(|(_, rect)| rect)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Asserts that all flags hang inside and clear of each other.
    #[track_caller]
    fn hangs_clear(flags: &[Flag], bounds: (i32, i32), most_lanes: usize) {
        let hung = hang(flags, bounds, 4);
        assert_eq!(hung.len(), flags.len());
        for (i, (flag, at)) in flags.iter().zip(&hung).enumerate() {
            assert!(at.lane < most_lanes, "{hung:?}");
            assert!(at.left >= bounds.0 && at.left + flag.width <= bounds.1);
            for (other, other_at) in flags.iter().zip(&hung).skip(i + 1) {
                assert!(!clash(*flag, *at, *other, *other_at, 4), "{hung:?}");
            }
        }
    }

    fn flag(pole: i32, width: i32) -> Flag {
        Flag { pole, width }
    }

    #[test]
    fn flags_far_apart_share_one_lane() {
        hangs_clear(&[flag(20, 60), flag(120, 60), flag(300, 60)], (0, 300), 1);
    }

    #[test]
    fn flags_close_together_climb() {
        hangs_clear(&[flag(20, 90), flag(70, 90), flag(300, 90)], (0, 300), 2);
        hangs_clear(&[flag(20, 90), flag(40, 90), flag(60, 90)], (0, 300), 3);
    }

    #[test]
    fn flags_at_the_right_edge_hang_to_the_left() {
        hangs_clear(&[flag(230, 90), flag(260, 90), flag(300, 90)], (0, 300), 3);
    }

    #[test]
    fn every_spread_of_three_poles_finds_room() {
        for a in (0..=300).step_by(25) {
            for b in (a..=300).step_by(25) {
                hangs_clear(&[flag(a, 100), flag(b, 120), flag(300, 80)], (0, 300), 3);
            }
        }
    }

    #[test]
    fn words_wider_than_the_picture_still_get_a_lane_each() {
        let hung = hang(&[flag(10, 900), flag(20, 900)], (0, 300), 4);
        assert_eq!(hung.iter().map(|h| h.lane).collect::<Vec<_>>(), [0, 1]);
    }

    #[test]
    fn a_line_through_a_rectangle_touches_it_and_one_past_it_does_not() {
        let rect = Rect {
            left: 10,
            top: 10,
            right: 30,
            bottom: 20,
        };
        assert!(rect.touches((0, 15), (40, 15)));
        assert!(rect.touches((0, 0), (40, 30)));
        assert!(!rect.touches((0, 25), (40, 25)));
        assert!(!rect.touches((0, 0), (5, 40)));
        assert!(!rect.touches((0, 15), (8, 15)));
    }

    #[test]
    fn curve_names_keep_clear_of_both_curves() {
        let line: Vec<Point> = (0..=30).map(|i| (i * 10, 300 - i * 6)).collect();
        let ramp: Vec<Point> = (0..=30).map(|i| (i * 10, 260 - i * i / 4)).collect();
        let area = Rect {
            left: 0,
            top: 0,
            right: 300,
            bottom: 300,
        };
        let first = beside_curve((60, 14), &line, &[&ramp], &[], &[100], area, 6)
            .expect("there is room beside a line");
        let second = beside_curve((60, 14), &ramp, &[&line], &[first], &[100], area, 6)
            .expect("there is room beside a ramp");
        assert!(!first.overlaps(second));
        for rect in [first, second] {
            for curve in [&line, &ramp] {
                assert!(!curve.windows(2).any(|p| rect.touches(p[0], p[1])));
            }
        }
    }

    #[test]
    fn a_full_picture_gives_no_room() {
        let area = Rect {
            left: 0,
            top: 0,
            right: 40,
            bottom: 40,
        };
        let line: Vec<Point> = (0..=4).map(|i| (i * 10, 40 - i * 10)).collect();
        assert_eq!(beside_curve((60, 14), &line, &[], &[], &[], area, 4), None);
    }
}
