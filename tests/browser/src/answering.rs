//! Whole pages of the wizard answered in one go, for the stretches of a walk where nothing special happens.

use anyhow::Result;

use crate::Page;

/// On every page, of equal rank with any answer.
const DONT_KNOW: &str = "I don't know";

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
}
