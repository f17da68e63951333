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
        var decimals = trial.Decimals == DecimalMark.Comma ? "a comma (5,6), with semicolons between values" : "a point (5.6), with commas between values";
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
            | 1. Ask and plan | `trial.json`: why, what would change your mind, margin, tasters; last of all the day on which the plan is final, `"declared"` | `notebooks/1-design.ipynb` |
            | 2. Dose | `hops.csv`: one row for each hop lot; then `charges.csv`: what was weighed | `notebooks/2-*.ipynb` |
            | 3. Brew, log, send to the lab | `batch-log.csv`: gravities, volumes, temperatures, yeast, days, of both halves; `lab-returns.csv` and the samples in `trial.json` | `notebooks/3-*.ipynb` |
            | 4. Serve and count | `splitbatch serve {folder}` draws orders and codes into `serving-main.csv` once the plan is declared; then `ballots-main.csv`: one row for each answer | `notebooks/4-*.ipynb` |
            | 5. Say it | `notes/introduction.md`: your own words, if you like | `notebooks/5-*.ipynb` |

            A notebook runs from the first day. Where data are not there yet, a cell says what is missing and which step makes it.

            ## Three commands

            ```
            splitbatch check {folder}
            splitbatch serve {folder}
            splitbatch run {folder}/notebooks --out {folder}-pages
            ```

            The first lists what is wrong or dubious in the files, with the place and what is accepted. The second makes the sealed key and the sheets for the printer. The third runs the notebooks on a copy and makes a page of each; to work in them, open them in Jupyter.

            ## The plan

            {Plan(trial)}

            Keep `serving-main.csv` from everyone who serves or tastes until the last ballot is in.

            ## Cautions

            {string.Join("\n", Cautions.All.Select(caution => "- " + caution.ToMarkdown()))}
            """.ReplaceLineEndings("\n") + "\n";
    }

    private static string Plan(NewTrial trial)
    {
        var plan = new PanelPlan(trial.Protocol, trial.Tasters) { Margin = trial.Margin };
        var few = trial.Protocol.HasKnownChance && trial.Tasters < trial.TastersNeeded
            ? $" To show a difference as large as the margin in 80 % of such panels takes {trial.TastersNeeded} tasters; with {trial.Tasters} it is shown in {Counts.Percent(Power.Of(trial.Protocol, trial.Tasters, 0.05, trial.Margin))}."
            : "";
        return $"{plan}{few} It is a draft until you declare it.";
    }
}
