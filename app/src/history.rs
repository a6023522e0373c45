//! Undo and redo: whole plans, since a plan is small. Each plan has its own history while the page lives, and the plans that were
//! opened one after the other have one that leads from plan to plan.

use sunlarder_engine::document::Document;

use crate::keep::PlanId;

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

    pub(crate) fn can_undo(&self) -> bool {
        !self.before.is_empty()
    }

    pub(crate) fn can_redo(&self) -> bool {
        !self.after.is_empty()
    }
}

/// A plan with its place in the storage.
pub(crate) type Placed = (PlanId, Document);
/// A step within a plan.
pub(crate) type Within = fn(&mut History, &Document) -> Option<Document>;
/// A step from plan to plan.
pub(crate) type Between = fn(&mut Histories, Placed) -> Option<Placed>;

/// Where undo and redo lead.
pub(crate) enum Step {
    /// To another state of the same plan.
    Within(Document),
    /// To another plan.
    To(PlanId, Document),
}

/// The histories of all plans that were open, and the way from plan to plan.
#[derive(Default)]
pub(crate) struct Histories {
    /// That of the plan that is open.
    own: History,
    /// Those of the others.
    others: Vec<(PlanId, History)>,
    /// Plans that were open before and after this one on the way.
    before: Vec<(PlanId, Document)>,
    after: Vec<(PlanId, Document)>,
    /// Whether any plan was opened yet.
    began: bool,
}

impl Histories {
    /// Nothing was opened yet.
    pub(crate) fn new() -> Self {
        Self::default()
    }

    /// Notes the plan as it stands before an edit of this kind.
    pub(crate) fn note(&mut self, kind: &'static str, plan: &Document, now: f64) {
        self.after.clear();
        self.own.note(kind, plan, now);
    }

    /// Notes that a plan is opened in the place of another.
    pub(crate) fn open(&mut self, present: (PlanId, Document), to: &PlanId) {
        if !core::mem::replace(&mut self.began, true) || present.0 == *to {
            return;
        }
        self.swap(&present.0, to);
        self.after.clear();
        self.before.push(present);
        if self.before.len() > DEPTH {
            self.before.remove(0);
        }
    }

    /// Lays the history of one plan aside and takes that of another up.
    fn swap(&mut self, from: &PlanId, to: &PlanId) {
        let known = self.others.iter().position(|(id, _)| id == to);
        let mut next = known.map(|at| self.others.swap_remove(at).1).unwrap_or_default();
        next.turn = self.own.turn.wrapping_add(1);
        let own = core::mem::replace(&mut self.own, next);
        self.others.push((from.clone(), own));
    }

    /// One step, within the plan if there is one, else between plans.
    pub(crate) fn go(
        &mut self,
        present: (PlanId, Document),
        within: Within,
        between: Between,
    ) -> Option<Step> {
        if let Some(plan) = within(&mut self.own, &present.1) {
            return Some(Step::Within(plan));
        }
        let from = present.0.clone();
        let (id, plan) = between(self, present)?;
        self.swap(&from, &id);
        Some(Step::To(id, plan))
    }

    /// The plan that was open before.
    pub(crate) fn back(&mut self, present: (PlanId, Document)) -> Option<(PlanId, Document)> {
        let before = self.before.pop()?;
        self.after.push(present);
        Some(before)
    }

    /// The plan that was gone back from.
    pub(crate) fn forth(&mut self, present: (PlanId, Document)) -> Option<(PlanId, Document)> {
        let after = self.after.pop()?;
        self.before.push(present);
        Some(after)
    }

    /// Ends the step of the plan that is open.
    pub(crate) fn end_step(&mut self) {
        self.own.end_step();
    }

    /// A number that stays for as long as what is on the page does.
    pub(crate) fn turn(&self) -> u32 {
        self.own.turn
    }

    /// Leads to a plan no more.
    pub(crate) fn forget(&mut self, id: &PlanId) {
        self.others.retain(|(own, _)| own != id);
        self.before.retain(|(own, _)| own != id);
        self.after.retain(|(own, _)| own != id);
    }

    pub(crate) fn can_undo(&self) -> bool {
        self.own.can_undo() || !self.before.is_empty()
    }

    pub(crate) fn can_redo(&self) -> bool {
        self.own.can_redo() || !self.after.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What stands on the page after a step.
    struct Page(PlanId, Document, Histories);

    impl Page {
        fn open(&mut self, id: &str, name: &str) {
            let to = PlanId::of(id);
            self.2.open((self.0.clone(), self.1.clone()), &to);
            (self.0, self.1) = (to, plan(name));
        }

        fn edit(&mut self, name: &str, now: f64) {
            self.2.note("name", &self.1, now);
            self.1 = plan(name);
        }

        fn take(&mut self, step: Option<Step>) -> bool {
            match step {
                Some(Step::Within(plan)) => self.1 = plan,
                Some(Step::To(id, plan)) => (self.0, self.1) = (id, plan),
                None => return false,
            }
            true
        }

        fn undo(&mut self) -> bool {
            let present = (self.0.clone(), self.1.clone());
            let step = self.2.go(present, History::undo, Histories::back);
            self.take(step)
        }

        fn redo(&mut self) -> bool {
            let present = (self.0.clone(), self.1.clone());
            let step = self.2.go(present, History::redo, Histories::forth);
            self.take(step)
        }
    }

    fn page() -> Page {
        Page(PlanId::of("0"), plan(""), Histories::new())
    }

    #[test]
    fn switching_plans_and_coming_back_loses_no_step() {
        let mut page = page();
        page.open("1", "a");
        assert!(!page.2.can_undo(), "nothing was there before the first plan");
        page.edit("ab", 0.0);
        page.open("2", "x");
        page.edit("xy", 5000.0);
        page.open("1", "ab");
        assert!(page.undo() && page.1 == plan("a"));
        assert!(page.redo() && page.1 == plan("ab"));
        page.open("2", "xy");
        assert!(page.undo() && page.1 == plan("x"));
    }

    #[test]
    fn a_plan_opened_over_another_is_undone_and_made_again() {
        let mut page = page();
        page.open("1", "a");
        page.edit("ab", 0.0);
        page.open("2", "x");
        assert!(page.undo());
        assert_eq!((&page.0, &page.1), (&PlanId::of("1"), &plan("ab")));
        assert!(page.undo() && page.1 == plan("a"));
        assert!(!page.undo());
        assert!(page.redo() && page.redo());
        assert_eq!((&page.0, &page.1), (&PlanId::of("2"), &plan("x")));
        assert!(!page.redo());
        page.2.forget(&PlanId::of("1"));
        assert!(!page.2.can_undo(), "no step leads to a plan that is gone");
    }

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
        let turn = history.turn;
        history.note("name", &plan("b"), 20.0);
        assert_ne!(history.turn, turn, "what could be taken back by itself no longer is");
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
