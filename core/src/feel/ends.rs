//! A figure for each end of the bike.

/// The same figure for the front and the rear.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Ends<T> {
    /// Front.
    pub front: T,
    /// Rear.
    pub rear: T,
}

impl<T> Ends<T> {
    /// The same, borrowed.
    pub fn as_ref(&self) -> Ends<&T> {
        Ends {
            front: &self.front,
            rear: &self.rear,
        }
    }

    /// Changes both in the same way.
    pub fn map<U>(self, mut change: impl FnMut(T) -> U) -> Ends<U> {
        Ends {
            front: change(self.front),
            rear: change(self.rear),
        }
    }
}

impl<T> Ends<T> {
    /// Joins each end with the same end of another.
    pub fn with<U>(self, other: Self, mut join: impl FnMut(T, T) -> U) -> Ends<U> {
        Ends {
            front: join(self.front, other.front),
            rear: join(self.rear, other.rear),
        }
    }
}

impl Ends<f64> {
    /// Front against rear: from −1, all of it at the rear, over 0, as much at either end, to 1, all of it at the front.
    /// 0 when there is nothing at either. The figures must not be negative.
    pub fn balance(&self) -> f64 {
        let sum = self.front + self.rear;
        if sum > 0.0 {
            (self.front - self.rear) / sum
        } else {
            0.0
        }
    }
}
