//! Where labels stand, so that none leaves the picture or covers another.

/// The size of text in charts \[px\]; it does not shrink with the picture.
pub(crate) const TEXT: f64 = 13.0;

/// About how wide a label is \[px\].
///
/// Rough on purpose: the page's type is the reader's own. The mean advance of figures and lower-case letters in wide
/// system faces is 0.57 of the size, in narrow ones 0.5.
pub(crate) fn text_width(text: &str) -> f64 {
    text.chars().count() as f64 * TEXT * 0.58
}

/// Which part of a label its place names; the words are SVG's.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Anchor {
    Start,
    Middle,
    End,
}

impl Anchor {
    /// The value of SVG's `text-anchor`.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// A label and the place of its anchor \[px\].
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Placed {
    pub(crate) text: String,
    pub(crate) x: f64,
    pub(crate) anchor: Anchor,
}

impl Placed {
    /// A label centred on `x`, or with an end at the edge of the frame where it would cross it.
    pub(crate) fn within((left, right): (f64, f64), x: f64, text: String) -> Self {
        let half = text_width(&text) / 2.0;
        let (x, anchor) = if x - half < left {
            (left, Anchor::Start)
        } else if x + half > right {
            (right, Anchor::End)
        } else {
            (x, Anchor::Middle)
        };
        Self { text, x, anchor }
    }

    /// The pixels from the first letter to the last.
    pub(crate) fn extent(&self) -> (f64, f64) {
        let width = text_width(&self.text);
        let start = match self.anchor {
            Anchor::Start => self.x,
            Anchor::Middle => self.x - width / 2.0,
            Anchor::End => self.x - width,
        };
        (start, start + width)
    }
}

/// Places labels from left to right within `frame`, leaving out each that would come closer than `gap` to the one before.
pub(crate) fn row(
    frame: (f64, f64),
    gap: f64,
    labels: impl IntoIterator<Item = (f64, String)>,
) -> Vec<Placed> {
    let mut placed: Vec<Placed> = Vec::new();
    for (x, text) in labels {
        let next = Placed::within(frame, x, text);
        let free = placed.last().is_none_or(|last| next.extent().0 >= last.extent().1 + gap);
        if free {
            placed.push(next);
        }
    }
    placed
}

#[cfg(test)]
mod tests {
    use super::*;

    const FRAME: (f64, f64) = (40.0, 340.0);

    #[test]
    fn a_label_is_centred_where_there_is_room() {
        let label = Placed::within(FRAME, 200.0, "Sat".into());
        assert_eq!((label.x, label.anchor), (200.0, Anchor::Middle));
    }

    #[test]
    fn a_label_never_leaves_the_frame() {
        for x in [-50.0, 40.0, 41.0, 60.0, 200.0, 330.0, 340.0, 900.0] {
            let (from, to) = Placed::within(FRAME, x, "Sat 07:00".into()).extent();
            assert!(from >= FRAME.0 && to <= FRAME.1, "at {x}: {from} to {to}");
        }
    }

    #[test]
    fn crowded_labels_are_left_out() {
        let days = (0..20).map(|i| (40.0 + 15.0 * f64::from(i), "Sat".to_owned()));
        let placed = row(FRAME, 8.0, days);
        assert!(placed.len() >= 5);
        for pair in placed.windows(2) {
            assert!(pair[1].extent().0 >= pair[0].extent().1 + 8.0, "{pair:?}");
        }
    }

    #[test]
    fn roomy_labels_all_stand() {
        let days =
            [(40.0, "Thu 16:00".to_owned()), (150.0, "Fri".to_owned()), (250.0, "Sat".to_owned())];
        assert_eq!(row(FRAME, 8.0, days).len(), 3);
    }
}
