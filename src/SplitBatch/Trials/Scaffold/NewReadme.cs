using SplitBatch.Panel.Planning;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Scaffold;

/// <summary>The README of a new trial: what each file is for, in the order of the work.</summary>
internal static class NewReadme
{
    /// <summary>The file's text.</summary>
    /// <param name="trial">What is known of the trial.</param>
    /// <param name="folder">The folder's name.</param>
    public static string Of(NewTrial trial, string folder)
    {
        var us = trial.Units == UnitSystem.Us;
        var decimals = trial.Decimals == DecimalMark.Comma
            ? "a comma (5,6), with semicolons between values"
            : "a point (5.6), with commas between values";
        return $"""
            # {trial.Title}

            {trial.Question}

            - Half A, the reference: {trial.NameA}
            - Half B, changed: {trial.NameB}
            - The one thing that differs: {trial.Variable}

            This folder is yours: plain files that a spreadsheet and a text editor open. Units are {(us ? "US units (gallons, ounces, °F)" : "metric (litres, grams, °C)")}; each CSV file names them in its header. The CSV files write decimals with {decimals}; `trial.json` always has a decimal point. Dates are year-month-day, as 2026-03-14. From a spreadsheet save as "CSV UTF-8" under the same name, and look whether it left the dates as they were.

            ## In the order of the work

            | step | write into | then look at |
            | --- | --- | --- |
            | 1. Ask and plan | `trial.json`: why, what would change your mind, margin, tasters; then `splitbatch declare {folder}` seals the plan | `notebooks/1-design.ipynb` |
            | 2. Dose | `hops.csv`: one row for each hop lot; then `charges.csv`: what was weighed | `notebooks/2-*.ipynb` |
            | 3. Brew, log, send to the lab | `batch-log.csv`: gravities, volumes, temperatures, yeast, days, of both halves; `lab-returns.csv` and the samples in `trial.json` | `notebooks/3-*.ipynb` |
            | 4. Serve | publish the seal's fingerprint; `splitbatch serve {folder}` draws orders and codes into `serving-main.csv`; then `ballots-main.csv`: one row for each answer | |
            | 5. Close and count | `splitbatch close {folder}` when no ballot is waited for any more; before it nobody sees the count | `notebooks/4-*.ipynb` |
            | 6. Say it | `notes/introduction.md`: your own words, if you like | `notebooks/5-*.ipynb` |

            A notebook runs from the first day. Where data are not there yet, a cell says what is missing and which step makes it.

            ## The commands

            ```
            splitbatch check {folder}
            splitbatch declare {folder}
            splitbatch serve {folder}
            splitbatch close {folder}
            splitbatch run {folder}/notebooks --out {folder}-pages
            splitbatch write-up {folder}
            ```

            `check` lists what is wrong or doubtful in the files, with the place and what is accepted. `declare` shows the plan in plain words, with what it can and cannot find out, and seals it: `seal-1.json`, which is never changed. Publish its fingerprint before you pour; only that proves to a stranger when the plan was fixed. A change afterwards goes into `trial.json` and then on record: `splitbatch amend {folder} --because "..."`. `serve` makes the key and the sheets for the printer. `close` ends the panel. `run` runs the notebooks on a copy and makes a page of each; to work in them, open them in Jupyter.

            ## The plan

            {Plan(trial)}

            Keep `serving-main.csv` from everyone who serves or tastes until the panel is closed; `splitbatch serve {folder} --key-folder ELSEWHERE` keeps it in another folder from the start.

            ## Cautions

            {string.Join("\n", Cautions.All.Select(caution => "- " + caution.ToMarkdown()))}
            """.ReplaceLineEndings("\n") + "\n";
    }

    private static string Plan(NewTrial trial)
    {
        var plan = new PanelPlan(trial.Protocol, trial.Tasters) { Margin = trial.Margin };
        var few = trial.Protocol.HasKnownChance && trial.Tasters < trial.TastersNeeded
            ? $" To show a difference as large as the margin in 80 % of such panels takes {trial.TastersNeeded} tasters; with "
                + $"{trial.Tasters} it is shown in {Printed.Percent(Power.Of(trial.Protocol, trial.Tasters, 0.05, trial.Margin))}."
            : "";
        return $"{plan}{few} It is a draft until you seal it.";
    }
}
