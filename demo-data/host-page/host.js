// What an invented workshop's page does with what it is told: it writes it down, and takes the answers.

const list = document.querySelector("#told");

const write = (text) => {
  const line = document.createElement("li");
  line.textContent = text;
  list.append(line);
};

for (const intake of document.querySelectorAll("sagwright-intake")) {
  intake.addEventListener("ready", ({ detail }) => write(`Ready, in the language ${detail.lang}.`));
  intake.addEventListener("step", ({ detail }) => write(`The rider is at: ${detail.step}.`));
  intake.addEventListener("error", ({ detail }) => write(`Something went wrong: ${detail.reason}.`));
  intake.addEventListener("finished", ({ detail }) => {
    // A real page sends these to its own server here, and says that it has them once the server has.
    const { parcel, intake: answers, advice } = detail;
    write(`Answers ${parcel.id} for ${parcel.workshop}: ${Object.keys(answers).join(", ")}; advice: ${advice.kind}.`);
    detail.taken();
  });
}
