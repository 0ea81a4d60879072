//! Answers as one word of letters, short enough for a link or a code to scan.
//!
//! The word is `1.` and then, in base64url without padding (RFC 4648, section 5), four bytes and the document packed
//! by deflate (RFC 1951). The four are the Adler-32 sum of the document (RFC 1950), the highest byte first, so that
//! a slip of the copying hand does not quietly become another number. Packing starts with a fixed text already seen,
//! which holds the names and words of a usual document; so little more than the answers themselves takes up room.
//! That text is part of the form: another text has to come with another number in front.

use base64::Engine as _;
use base64::engine::general_purpose::URL_SAFE_NO_PAD as BASE64URL;
use miniz_oxide::deflate::core::{
    CompressorOxide, TDEFLFlush, TDEFLStatus, compress, create_comp_flags_from_zip_params,
};
use miniz_oxide::inflate::TINFLStatus;
use miniz_oxide::inflate::core::{DecompressorOxide, decompress, inflate_flags};

use super::check::IntakeError;
use super::document::Intake;
use super::read::{read, write};
use crate::words::{Arg, Text};

/// The form written by this build.
const FORM: u32 = 1;

/// What packing has seen before the first letter of form 1. Never to be changed.
const SEEN: &[u8] = include_bytes!("link_1.txt");

/// Longest word written and read, letters. A full intake with the longest note takes some 900.
pub const LONGEST_LINK: usize = 4096;

/// Largest document packed and unpacked, bytes: a full intake with a note of 500 letters takes under 6 kB, and the answers
/// to a workshop's own questions as much again.
const LARGEST_UNPACKED: usize = 32 * 1024;

/// The strongest level of deflate.
const LEVEL: i32 = 9;
/// No header and no trailer around the packed bytes, in the terms of zlib.
const BARE: i32 = -15;
/// Any way of packing, in the terms of zlib.
const ANY: i32 = 0;

/// The answers as a word for a link; `None` where they are too many for one, as only long answers in the rider's own
/// words can make them.
pub fn to_link(intake: &Intake) -> Option<String> {
    let document = write(intake).ok()?;
    let document = document.as_bytes();
    if document.len() > LARGEST_UNPACKED {
        return None;
    }
    let mut bytes = adler2::adler32_slice(document).to_be_bytes().to_vec();
    bytes.extend(pack(document)?);
    let word = format!("{FORM}.{}", BASE64URL.encode(bytes));
    (word.len() <= LONGEST_LINK).then_some(word)
}

/// The answers in the word of a link.
///
/// # Errors
/// [`IntakeError`] that says what is wrong with the word, or names every problem of the document in it.
pub fn from_link(word: &str) -> Result<Intake, IntakeError> {
    let document = unwrap(word.trim()).map_err(|text| IntakeError::one("", text))?;
    read(&document)
}

/// The document in a word, or what is wrong with the word.
fn unwrap(word: &str) -> Result<String, Text> {
    if word.is_empty() {
        return Err(Text::new("problem.link-empty"));
    }
    if word.len() > LONGEST_LINK {
        return Err(Text::new("problem.link-too-long").with("most", count(LONGEST_LINK)));
    }
    let not_ours = || Text::new("problem.link-not-ours");
    let (form, letters) = word.split_once('.').ok_or_else(not_ours)?;
    if !form.bytes().all(|b| b.is_ascii_digit()) {
        return Err(not_ours());
    }
    match form.parse() {
        Ok(FORM) => {}
        Ok(found) if found > FORM => {
            return Err(Text::new("problem.link-newer")
                .with("found", Arg::Count(i64::from(found)))
                .with("known", Arg::Count(i64::from(FORM))));
        }
        _ => return Err(not_ours()),
    }
    let damaged = || Text::new("problem.link-damaged");
    let bytes = BASE64URL.decode(letters).map_err(|_| damaged())?;
    let (sum, packed) = bytes.split_first_chunk::<4>().ok_or_else(damaged)?;
    let document = unpack(packed).ok_or_else(damaged)?;
    if adler2::adler32_slice(&document) != u32::from_be_bytes(*sum) {
        return Err(damaged());
    }
    String::from_utf8(document).map_err(|_| damaged())
}

fn count(n: usize) -> Arg {
    Arg::Count(i64::try_from(n).unwrap_or(i64::MAX))
}

/// Packs a document; `None` if the packer fails, which it does on no input known.
fn pack(document: &[u8]) -> Option<Vec<u8>> {
    let flags = create_comp_flags_from_zip_params(LEVEL, BARE, ANY);
    let mut packer = CompressorOxide::new(flags);
    // Packed bytes of the text seen before end at a whole byte and are left out; what follows refers back to it.
    feed(&mut packer, SEEN, TDEFLFlush::Sync, TDEFLStatus::Okay)?;
    feed(&mut packer, document, TDEFLFlush::Finish, TDEFLStatus::Done)
}

/// Hands the packer all of `input` and gives what it wrote.
fn feed(
    packer: &mut CompressorOxide,
    input: &[u8],
    flush: TDEFLFlush,
    expected: TDEFLStatus,
) -> Option<Vec<u8>> {
    // Deflate stores what it cannot shrink, with five bytes for every block; so this is room enough.
    let mut output = vec![0; input.len() + 1024];
    let (status, read, written) = compress(packer, input, &mut output, flush);
    if status != expected || read != input.len() {
        return None;
    }
    output.truncate(written);
    Some(output)
}

/// Unpacks a document; `None` where the bytes are no packed document, break off, go on beyond their end, or hold
/// more than [`LARGEST_UNPACKED`].
fn unpack(packed: &[u8]) -> Option<Vec<u8>> {
    let mut output = SEEN.to_vec();
    output.resize(SEEN.len() + LARGEST_UNPACKED, 0);
    let (status, read, written) = decompress(
        &mut DecompressorOxide::new(),
        packed,
        &mut output,
        SEEN.len(),
        inflate_flags::TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF,
    );
    if status != TINFLStatus::Done || read != packed.len() {
        return None;
    }
    output.truncate(SEEN.len() + written);
    Some(output.split_off(SEEN.len()))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Links that people have printed or sent must open for good. This one was made when the form was new, by zlib
    /// rather than by this program.
    #[test]
    fn a_link_of_the_first_day_still_opens() {
        let json = include_str!("../../../tests/links/first.json");
        let intake = read(json).expect("a document of version 1");
        let word = include_str!("../../../tests/links/first.txt");
        assert_eq!(from_link(word), Ok(intake));
    }

    #[test]
    fn the_answers_of_any_invented_rider_fit_into_250_letters() {
        let riders = [
            include_str!("../../../demo-data/adventure-bike-that-fades.json"),
            include_str!("../../../demo-data/enduro-that-packs-down.json"),
            include_str!("../../../demo-data/gas-fork-cold-morning.json"),
            include_str!("../../../demo-data/gas-fork-over-pressured.json"),
            include_str!("../../../demo-data/gas-fork-right-but-harsh.json"),
            include_str!("../../../demo-data/heavy-rider-on-standard-springs.json"),
            include_str!("../../../demo-data/light-expert-whose-rear-kicks.json"),
        ];
        for json in riders {
            let intake = Intake {
                note: String::new(),
                ..read(json).expect("an invented rider")
            };
            let word = to_link(&intake).expect("plain data");
            assert!(word.len() <= 250, "{} letters: {json}", word.len());
            assert_eq!(from_link(&word), Ok(intake));
        }
    }

    #[test]
    fn a_link_survives_blanks_around_it() {
        let word = to_link(&Intake::default()).expect("plain data");
        assert_eq!(from_link(&format!(" {word}\n")), Ok(Intake::default()));
    }

    #[test]
    fn what_no_document_can_hold_makes_no_link_that_opens() {
        let mut intake = Intake::default();
        crate::intake::Field::RiderWeight.set(
            &mut intake,
            Some(crate::quantity::Typed {
                value: f64::NAN,
                unit: crate::quantity::Unit::Kilogram,
                how: None,
            }),
        );
        let opened = to_link(&intake).map(|word| from_link(&word));
        assert!(opened.is_none_or(|found| found.is_err()));
    }
}
