//! The one store of inputs, and the answers that follow from it.
//!
//! What is saved (the plan) and what is passing (which load is open, what is being typed) are apart: the store holds the first, components
//! the second. Answers are a memo; effects live only at the edges (storage, address).

use core::ops::Deref;
use std::sync::Arc;

use crate::signal::*;
use sunlarder_engine::document::{Document, Problem};
use sunlarder_engine::outlook::{Guessed, Opening, Outlook};
use sunlarder_engine::place::Climate;
use sunlarder_engine::simulate::Sunlight;
use sunlarder_engine::system::System;
use sunlarder_engine::words::Label;
use sunlarder_engine::working::Tag;

use crate::drawers::Chest;
use crate::history::{Between, Histories, History, Step, Within};
use crate::keep::{self, PlanId};
use crate::worker::{Worked, rest};

pub(crate) use crate::speech::{WORDS, words};

/// A plan and what it comes to from its start on.
#[derive(Debug)]
pub(crate) struct Opened {
    /// The plan, resolved.
    pub(crate) system: Arc<System>,
    /// What it comes to.
    pub(crate) opening: Arc<Opening>,
}

/// A plan and all answers about it.
#[derive(Debug)]
pub(crate) struct Solved {
    /// The plan, resolved.
    pub(crate) system: Arc<System>,
    /// The answers.
    pub(crate) outlook: Outlook,
}

/// Answers, or why there are none.
#[derive(Debug)]
pub(crate) struct Answers<T = Solved>(pub(crate) Result<Arc<T>, Problem>);

impl<T> Clone for Answers<T> {
    fn clone(&self) -> Self {
        Self(self.0.clone())
    }
}

impl<T> PartialEq for Answers<T> {
    fn eq(&self, other: &Self) -> bool {
        match (&self.0, &other.0) {
            // Comparing thousands of samples would cost more than drawing them again.
            (Ok(one), Ok(other)) => Arc::ptr_eq(one, other),
            (Err(one), Err(other)) => one == other,
            _ => false,
        }
    }
}

impl Answers<Opened> {
    /// Tells what a plan comes to from its start on, over what is known of the sun from the one before.
    fn to_begin_with(document: &Document, earth: &Climate, sunlight: &mut Sunlight) -> Self {
        Self(System::assemble(document, earth, &mut ()).map(|system| {
            let opening = Arc::new(Opening::in_sunlight(&system, sunlight));
            Arc::new(Opened { system: Arc::new(system), opening })
        }))
    }

    /// All answers.
    fn completed(&self, sunlight: &mut Sunlight) -> Answers {
        Answers(self.0.clone().map(|opened| {
            let system = Arc::clone(&opened.system);
            let outlook = Outlook::opened(Arc::clone(&opened.opening), &system, sunlight);
            Arc::new(Solved { system, outlook })
        }))
    }
}

impl Answers {
    /// Answers all questions about a plan.
    pub(crate) fn to(document: &Document, earth: &Climate) -> Self {
        let sunlight = &mut Sunlight::default();
        Answers::to_begin_with(document, earth, sunlight).completed(sunlight)
    }
}

impl<T> Answers<T> {
    /// The answers, if there are any.
    pub(crate) fn solved(&self) -> Option<&Arc<T>> {
        self.0.as_ref().ok()
    }
}

/// Something the page has to say in passing.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Notice {
    /// The sentence.
    pub(crate) text: String,
    /// Whether something went wrong.
    pub(crate) grave: bool,
    /// It tells of a change that can be taken back for as long as this is the turn of the history.
    pub(crate) turn: Option<u32>,
}

/// Which face the page shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Face {
    /// The choice of what to start from.
    Start,
    /// The planner.
    Planner,
    /// Another plan beside this one.
    Beside,
    /// A question whose answer is hidden.
    Guess,
}

/// Which dialog is open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Dialog {
    /// The plans on this device.
    Plans,
    /// Link and file.
    Share,
    /// The code of the link, large.
    Code,
    /// The baseline and what else to compare with.
    Compare,
    /// Units, clock and language.
    Habits,
}

/// The plan that all figures are held against. Its answers are worked out once.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Baseline {
    /// The plan.
    pub(crate) plan: Document,
    /// What it comes to.
    pub(crate) answers: Answers,
}

impl Baseline {
    /// What it comes to, if it can be worked out.
    pub(crate) fn solved(&self) -> Option<&Solved> {
        self.answers.solved().map(|own| &**own)
    }
}

/// The store, of which there is one for as long as the page lives. It is no more than the address of its parts: views hand it on
/// to all that they make, and each copy of two dozen handles would be code.
#[derive(Clone, Copy)]
pub(crate) struct Store(&'static Parts);

impl Deref for Store {
    type Target = Parts;

    fn deref(&self) -> &Parts {
        self.0
    }
}

/// What the store consists of.
pub(crate) struct Parts {
    /// The climate of the earth.
    pub(crate) earth: &'static Climate,
    /// The plan.
    pub(crate) plan: RwSignal<Document>,
    /// Its place in the storage.
    pub(crate) id: RwSignal<PlanId>,
    /// What it comes to from its start on, which the first frame after an edit tells.
    pub(crate) answers: Signal<Answers<Opened>>,
    /// All answers, one frame later, for the year and the curve: words and figures come first, and quick edits skip what nobody would
    /// see.
    pub(crate) drawn: RwSignal<Answers>,
    /// The same yet a frame later, for the pictures below, so that no single turn keeps the next edit waiting long.
    pub(crate) drawn_below: RwSignal<Answers>,
    /// Which face is shown.
    pub(crate) face: RwSignal<Face>,
    /// Which dialog is open.
    pub(crate) dialog: RwSignal<Option<Dialog>>,
    /// What is said in passing.
    pub(crate) notice: RwSignal<Option<Notice>>,
    /// The plan that all figures are held against.
    pub(crate) baseline: RwSignal<Option<Baseline>>,
    /// The plan that is laid beside this one.
    pub(crate) other: RwSignal<Document>,
    /// What is to be guessed.
    pub(crate) guessed: RwSignal<Guessed>,
    /// Who guessed what.
    pub(crate) guesses: RwSignal<Vec<(String, f64)>>,
    /// Counts changes of habits, after which everything is said anew.
    pub(crate) habits: RwSignal<u32>,
    /// Counts what changes the list of stored plans.
    pub(crate) stored: RwSignal<u32>,
    /// The sheet that is to be printed now; empty while nobody asked for it.
    pub(crate) sheet: RwSignal<String>,
    /// The figures whose working is on the page.
    pub(crate) worked: Worked,
    /// What is shut when the page stands.
    pub(crate) chest: RwSignal<Chest>,
    /// What the first box with a wrong entry is called; empty while there is none.
    pub(crate) wrong: RwSignal<String>,
    history: RwSignal<Histories>,
    /// What stands before the plan in the link whose code is shown large.
    pub(crate) coded: StoredValue<String>,
    /// What was last kept on the device.
    kept: StoredValue<Option<(PlanId, Document)>>,
    /// What is known of the sun of the plan.
    sunlight: StoredValue<Sunlight>,
}

/// Does something over what is known of the sun, and keeps what comes to be known.
fn in_sunlight<T>(known: StoredValue<Sunlight>, act: impl FnOnce(&mut Sunlight) -> T) -> T {
    let mut sunlight = known.try_update_value(core::mem::take).unwrap_or_default();
    let made = act(&mut sunlight);
    known.set_value(sunlight);
    made
}

impl Store {
    /// A store with a blank plan.
    pub(crate) fn new(earth: &'static Climate) -> Self {
        let plan = RwSignal::new(Document::default());
        let sunlight = StoredValue::new(Sunlight::default());
        let answers = Signal::derive(move || {
            in_sunlight(sunlight, |known| {
                plan.with(|plan| Answers::to_begin_with(plan, earth, known))
            })
        });
        let all = answers.with_untracked(|own| in_sunlight(sunlight, |known| own.completed(known)));
        Self(Box::leak(Box::new(Parts {
            earth,
            plan,
            id: RwSignal::new(PlanId::fresh()),
            answers,
            drawn: RwSignal::new(all.clone()),
            drawn_below: RwSignal::new(all),
            face: RwSignal::new(Face::Start),
            dialog: RwSignal::new(None),
            notice: RwSignal::new(None),
            baseline: RwSignal::new(None),
            other: RwSignal::new(Document::default()),
            guessed: RwSignal::new(Guessed::Hours),
            guesses: RwSignal::new(Vec::new()),
            habits: RwSignal::new(0),
            stored: RwSignal::new(0),
            sheet: RwSignal::new(String::new()),
            worked: Worked::new(),
            chest: RwSignal::new(Chest::Coming),
            wrong: RwSignal::new(String::new()),
            history: RwSignal::new(Histories::new()),
            coded: StoredValue::new(String::new()),
            kept: StoredValue::new(None),
            sunlight,
        })))
    }

    /// All answers, now.
    pub(crate) fn solved(self) -> Answers {
        self.answers.with_untracked(|own| in_sunlight(self.sunlight, |known| own.completed(known)))
    }

    /// Changes the plan; edits of one kind in quick succession are undone together.
    pub(crate) fn edit(self, kind: &'static str, change: &mut dyn FnMut(&mut Document)) {
        rest();
        let now = js_sys::Date::now();
        self.history
            .update(|history| self.plan.with_untracked(|plan| history.note(kind, plan, now)));
        self.plan.update(|plan| change(plan));
    }

    /// Opens a plan in place of the present one, which stays in the storage. Undo leads back to it.
    pub(crate) fn open(self, id: PlanId, plan: Document) {
        let was_open = self.face.get_untracked() == Face::Planner;
        let other = was_open && self.plan.with_untracked(|own| *own != plan);
        if other && self.keep_now().is_err() {
            self.say(WORDS.label(Label::UndoOpens));
        }
        let present = self.present();
        self.history.update(|history| history.open(present, &id));
        self.show(id, plan);
        // At once, so that it stands in the list of plans; that it is refused is told when the next change is.
        let _ = self.keep_now();
    }

    /// The present plan and its place.
    fn present(self) -> (PlanId, Document) {
        (self.id.get_untracked(), self.plan.get_untracked())
    }

    /// Puts a plan on the page.
    fn show(self, id: PlanId, plan: Document) {
        rest();
        self.hold_against(keep::baseline(&id));
        self.guesses.set(Vec::new());
        self.id.set(id);
        self.plan.set(plan);
        self.face.set(Face::Planner);
        self.dialog.set(None);
    }

    /// Keeps the plan that is open on the device.
    pub(crate) fn keep_now(self) -> Result<(), ()> {
        if self.face.get_untracked() != Face::Planner {
            return Ok(());
        }
        let present = self.present();
        keep::keep(&present.0, &present.1)?;
        self.kept.set_value(Some(present));
        Ok(())
    }

    /// The same if it is not what was last kept: another window may have changed that since.
    pub(crate) fn keep_change_now(self) {
        let known = self.kept.with_value(|kept| *kept == Some(self.present()));
        if !known {
            let _ = self.keep_now();
        }
    }

    /// Opens a plan that came from outside: the stored one if it is the same, else as a new one.
    pub(crate) fn open_new(self, plan: Document) {
        let was_open = self.face.get_untracked() == Face::Planner;
        let other = was_open && self.plan.with_untracked(|own| *own != plan);
        let known = keep::plans().into_iter().find(|kept| kept.plan.as_ref() == Ok(&plan));
        self.notice.set(None);
        self.open(known.map_or_else(PlanId::fresh, |kept| kept.id), plan);
        if other && self.notice.with_untracked(Option::is_none) {
            self.say(WORDS.label(Label::KeptUnderPlans));
        }
    }

    /// Holds all figures against a plan, or against none.
    fn hold_against(self, plan: Option<Document>) {
        self.baseline.set(plan.map(|plan| {
            let answers = Answers::to(&plan, self.earth);
            Baseline { plan, answers }
        }));
    }

    /// Makes a plan the baseline of the present one, and keeps that on the device; none takes it away.
    pub(crate) fn set_baseline(self, plan: Option<Document>) {
        if keep::keep_baseline(&self.id.get_untracked(), plan.as_ref()).is_err() {
            self.complain(WORDS.label(Label::StorageRefused));
        }
        self.hold_against(plan);
        self.dialog.set(None);
    }

    /// Lays a plan beside the present one.
    pub(crate) fn lay_beside(self, plan: Document) {
        self.other.set(plan);
        self.face.set(Face::Beside);
        self.dialog.set(None);
    }

    /// Takes the last change back, or goes back to the plan of before where there was none.
    pub(crate) fn undo(self) {
        self.go(History::undo, Histories::back);
    }

    /// Makes the change taken back again.
    pub(crate) fn redo(self) {
        self.go(History::redo, Histories::forth);
    }

    fn go(self, within: Within, between: Between) {
        let present = self.present();
        let step = self.history.try_update(|all| all.go(present, within, between));
        match step.flatten() {
            Some(Step::Within(plan)) => {
                rest();
                self.plan.set(plan);
            }
            Some(Step::To(id, plan)) => self.show(id, plan),
            None => {}
        }
    }

    /// Forgets a plan of the device, and the steps that lead to it.
    pub(crate) fn forget(self, id: &PlanId) {
        keep::forget(id);
        self.history.update(|history| history.forget(id));
        self.stored.update(|count| *count += 1);
    }

    /// Whether there is something to take back.
    pub(crate) fn can_undo(self) -> bool {
        self.history.with(Histories::can_undo)
    }

    /// Whether there is something to make again.
    pub(crate) fn can_redo(self) -> bool {
        self.history.with(Histories::can_redo)
    }

    /// Says something in passing.
    pub(crate) fn say(self, text: impl Into<String>) {
        self.notice.set(Some(Notice { text: text.into(), grave: false, turn: None }));
    }

    /// Says what has just been changed, with a button that takes it back.
    pub(crate) fn say_changed(self, text: impl Into<String>) {
        // What is taken back by that button is this change alone.
        self.history.update(Histories::end_step);
        let turn = Some(self.history.with_untracked(Histories::turn));
        self.notice.set(Some(Notice { text: text.into(), grave: false, turn }));
    }

    /// Whether nothing has changed since that turn of the history.
    pub(crate) fn is_turn(self, turn: u32) -> bool {
        self.history.with(Histories::turn) == turn
    }

    /// Says that something went wrong.
    pub(crate) fn complain(self, text: impl Into<String>) {
        self.notice.set(Some(Notice { text: text.into(), grave: true, turn: None }));
    }

    /// What a load or array is called, for sentences of the engine.
    pub(crate) fn name_of(self, tag: Tag) -> Option<String> {
        match tag {
            Tag::Load(place) => {
                self.plan.with(|plan| plan.loads.get(usize::from(place)).map(crate::load_row::name))
            }
            _ => None,
        }
    }
}
