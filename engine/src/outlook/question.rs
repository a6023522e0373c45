//! The figures whose working a person can ask for, by ids that messages can carry.

use super::Outlook;
use crate::system::System;
use crate::working::Trace;

/// A figure of an outlook that opens into its working.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Question {
    /// What the bank holds and what of it may be used.
    Capacity,
    /// The state of charge at the end of the run in the mean weather.
    Run,
    /// Days of autonomy.
    Autonomy,
    /// The use of an average day in the month of the start.
    Budget,
    /// The balance of the month of the start.
    Month,
}

impl Question {
    /// Every question. A new one goes to the end: its place is its number in messages.
    pub const ALL: [Self; 5] =
        [Self::Capacity, Self::Run, Self::Autonomy, Self::Budget, Self::Month];
}

impl Outlook {
    /// Works a figure of this outlook out again with every step; `system` must be the one that the outlook is of. The last step
    /// is the figure, but for the days of autonomy of a plan that uses nothing, which have none.
    pub fn work(&self, question: Question, system: &System, trace: &mut impl Trace) {
        match question {
            Question::Capacity => {
                self.capacity_worked(system, trace);
            }
            Question::Run => {
                self.capacity_worked(system, trace);
                self.run.account(trace);
            }
            Question::Autonomy => {
                self.autonomy_worked(system, trace);
            }
            Question::Budget => {
                self.budget_worked(system, trace);
            }
            Question::Month => {
                self.month_worked(system, self.month, trace);
            }
        }
    }
}
