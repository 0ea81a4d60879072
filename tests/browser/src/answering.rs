//! Whole pages of the wizard answered in one go, for the stretches of a walk where nothing special happens.

use anyhow::{Result, bail};

use crate::Page;

/// On every page, of equal rank with any answer.
pub const DONT_KNOW: &str = "I don't know";
/// The same where something is to be measured.
pub const NOT_MEASURED: &str = "I haven't measured it";

impl Page {
    /// Arrives at a question, chooses an answer, goes on.
    pub async fn answer(&self, question: &str, choice: &str) -> Result<()> {
        self.arrives_at(question).await?;
        self.choose(choice).await?;
        self.continue_().await
    }

    /// Arrives at a question, types its numbers, goes on.
    pub async fn measure(&self, question: &str, numbers: &[(&str, &str)]) -> Result<()> {
        self.arrives_at(question).await?;
        for (label, text) in numbers {
            self.fill(label, text).await?;
        }
        self.continue_().await
    }

    /// Arrives at a question, chooses an answer in each of its groups, goes on.
    pub async fn answer_each(&self, question: &str, answers: &[(&str, &str)]) -> Result<()> {
        self.arrives_at(question).await?;
        for (group, choice) in answers {
            self.choose_in(group, choice).await?;
        }
        self.continue_().await
    }

    /// Arrives at a question with a list to pick from and does not know the answer.
    pub async fn does_not_know(&self, question: &str) -> Result<()> {
        self.answer(question, DONT_KNOW).await
    }

    /// Arrives at a question without such a list and passes it with the button beside "Continue".
    pub async fn passes(&self, question: &str, button: &str) -> Result<()> {
        self.arrives_at(question).await?;
        self.click(button).await
    }

    /// Puts the checks of the advice aside until the wanted one is offered.
    pub async fn is_offered(&self, check: &str) -> Result<()> {
        const NAME: &str = "document.getElementById('check-name')?.innerText ?? ''";
        for _ in 0..4 {
            let name = self.evaluate(NAME).await?;
            if name == check {
                return Ok(());
            }
            self.click("I can't check this").await?;
            self.is_true(&format!("({NAME}) !== {name}")).await?;
        }
        bail!("{check} is never offered")
    }

    /// Knows nothing of all that is asked after the weight, up to the signs to stop riding.
    pub async fn knows_nothing_else(&self) -> Result<()> {
        for question in [
            "riding gear on?",
            "How fast do you ride?",
            "most of a ride?",
        ] {
            self.does_not_know(question).await?;
        }
        self.passes("How tall are you?", DONT_KNOW).await?;
        self.does_not_know("What kind of bike is it?").await?;
        self.passes("What does the bike weigh", DONT_KNOW).await?;
        self.does_not_know("How much fuel").await?;
        self.does_not_know("What carries the front").await?;
        self.passes("Which fork springs are in it?", DONT_KNOW)
            .await?;
        self.does_not_know("How does the shock").await?;
        for question in [
            "Which shock spring",
            "Where do the fork clickers",
            "Where do the shock clickers",
            "How long ago",
            "What ground",
            "What are the usual",
            "And today?",
        ] {
            self.passes(question, DONT_KNOW).await?;
        }
        self.answer("What is wrong?", "I don't know how to put it")
            .await?;
        for question in [
            "What is the sag at the front?",
            "What is the sag at the rear?",
            "How much of the fork's travel",
            "tyre pressures?",
        ] {
            self.passes(question, NOT_MEASURED).await?;
        }
        self.passes("What does a slow push", "I haven't tried it")
            .await?;
        self.does_not_know("Have you seen any of these?").await
    }
}
