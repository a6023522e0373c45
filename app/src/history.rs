//! Undo and redo: whole plans, since a plan is small.

use sunlarder_engine::document::Document;

/// Steps that can be taken back.
const DEPTH: usize = 100;
/// Edits of one kind closer together than this are one step \[ms\].
const TOGETHER: f64 = 900.0;

/// Plans before and after the present one.
#[derive(Default)]
pub(crate) struct History {
    before: Vec<Document>,
    after: Vec<Document>,
    last: Option<(&'static str, f64)>,
    /// Counts whatever changes the plan.
    turn: u32,
}

impl History {
    /// Notes the plan as it stands before an edit of this kind.
    pub(crate) fn note(&mut self, kind: &'static str, plan: &Document, now: f64) {
        self.turn = self.turn.wrapping_add(1);
        let together = self
            .last
            .is_some_and(|(last, at)| last == kind && now - at < TOGETHER && self.after.is_empty());
        self.last = Some((kind, now));
        if together && !self.before.is_empty() {
            return;
        }
        self.after.clear();
        self.before.push(plan.clone());
        if self.before.len() > DEPTH {
            self.before.remove(0);
        }
    }

    /// The plan before the last step.
    pub(crate) fn undo(&mut self, now: &Document) -> Option<Document> {
        let plan = self.before.pop()?;
        self.turn = self.turn.wrapping_add(1);
        self.after.push(now.clone());
        self.last = None;
        Some(plan)
    }

    /// The plan after the step last taken back.
    pub(crate) fn redo(&mut self, now: &Document) -> Option<Document> {
        let plan = self.after.pop()?;
        self.turn = self.turn.wrapping_add(1);
        self.before.push(now.clone());
        self.last = None;
        Some(plan)
    }

    /// Ends the step: what comes next is one of its own, even if it is of the same kind.
    pub(crate) fn end_step(&mut self) {
        self.last = None;
    }

    /// Forgets all steps, as for another plan.
    pub(crate) fn forget(&mut self) {
        *self = Self { turn: self.turn.wrapping_add(1), ..Self::default() };
    }

    /// A number that stays for as long as the plan does.
    pub(crate) fn turn(&self) -> u32 {
        self.turn
    }

    pub(crate) fn can_undo(&self) -> bool {
        !self.before.is_empty()
    }

    pub(crate) fn can_redo(&self) -> bool {
        !self.after.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plan(name: &str) -> Document {
        Document { name: name.into(), ..Document::default() }
    }

    #[test]
    fn steps_are_taken_back_and_made_again() {
        let mut history = History::default();
        history.note("name", &plan("a"), 0.0);
        history.note("bank", &plan("b"), 10.0);
        assert_eq!(history.undo(&plan("c")), Some(plan("b")));
        assert_eq!(history.undo(&plan("b")), Some(plan("a")));
        assert_eq!(history.undo(&plan("a")), None);
        assert_eq!(history.redo(&plan("a")), Some(plan("b")));
        let turn = history.turn();
        history.note("name", &plan("b"), 20.0);
        assert_ne!(history.turn(), turn, "what could be taken back by itself no longer is");
        assert!(!history.can_redo(), "a new edit ends what could be made again");
    }

    #[test]
    fn quick_edits_of_one_kind_are_one_step() {
        let mut history = History::default();
        for (text, at) in [("a", 0.0), ("ab", 200.0), ("abc", 400.0)] {
            history.note("name", &plan(text), at);
        }
        history.note("name", &plan("abcd"), 5000.0);
        assert_eq!(history.undo(&plan("abcde")), Some(plan("abcd")));
        assert_eq!(history.undo(&plan("abcd")), Some(plan("a")));
    }

    #[test]
    fn a_step_that_has_ended_is_taken_back_alone() {
        let mut history = History::default();
        history.note("add load", &plan("a"), 0.0);
        history.end_step();
        history.note("add load", &plan("b"), 100.0);
        assert_eq!(history.undo(&plan("c")), Some(plan("b")));
    }

    #[test]
    fn the_oldest_steps_are_forgotten() {
        let mut history = History::default();
        for at in 0..150 {
            history.note("name", &plan("x"), f64::from(at) * 2000.0);
        }
        assert_eq!(history.before.len(), DEPTH);
    }
}
