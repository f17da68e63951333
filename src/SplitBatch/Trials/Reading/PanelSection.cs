using SplitBatch.Panel.Planning;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Seals;

namespace SplitBatch.Trials.Reading;

/// <summary>A panel as trial.json has it.</summary>
/// <param name="Plan">What is planned.</param>
/// <param name="Import">How a web form's export is read as ballots; null where ballots are typed.</param>
internal sealed record PanelSection(PanelPlan Plan, BallotImport? Import)
{
    /// <summary>The panels that could be read, in the file's order.</summary>
    public static IReadOnlyList<PanelSection> Read(JsonSection json)
    {
        var panels = new List<PanelSection>();
        foreach (var section in json.Sections("panels"))
        {
            var plan = PanelPlanReader.Read(section);
            var import = section.Section("ballots") is { } form ? BallotImport.FromJson(form) : null;
            if (plan is null) continue;
            if (panels.Exists(known => string.Equals(known.Plan.Name, plan.Name, StringComparison.OrdinalIgnoreCase)))
            {
                section.Refuse("name", "Two panels have this name.", "each panel once", plan.Name);
                continue;
            }

            panels.Add(new(plan, import));
        }

        return panels;
    }
}
