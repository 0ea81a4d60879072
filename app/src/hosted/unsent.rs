//! Letters on their way, as every page speaks of them.

/// Answers that have not reached their workshop.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unsent {
    /// Why not.
    pub why: Why,
    /// The workshop's name.
    pub workshop: String,
}

/// Why answers have not reached their workshop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Why {
    /// They are tried until they have.
    Waiting,
    /// The same, and the device does not keep them.
    Unkept,
    /// The workshop did not take them.
    Refused,
}

impl Why {
    const ALL: [Self; 3] = [Self::Waiting, Self::Unkept, Self::Refused];

    /// The key of the sentence that says so.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Waiting => "hosted.notice-waiting",
            Self::Unkept => "hosted.notice-unkept",
            Self::Refused => "hosted.notice-refused",
        }
    }

    /// The reason with this key.
    pub fn of(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|why| why.key() == key)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_reason_is_found_by_its_key() {
        for why in Why::ALL {
            assert_eq!(Why::of(why.key()), Some(why));
        }
        assert_eq!(Why::of("hosted.for"), None);
    }
}
