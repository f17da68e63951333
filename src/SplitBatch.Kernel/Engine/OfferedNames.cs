using System.Collections.Frozen;
using System.Reflection;
using System.Runtime.CompilerServices;
using SplitBatch.Bitterness.Models;
using SplitBatch.Display.WriteUp;
using SplitBatch.Lab;
using SplitBatch.Numbers;
using SplitBatch.Panel.Deciding;
using SplitBatch.Panel.Planning;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Kernel.Engine;

/// <summary>
/// Which of the library's types the completion key offers. A cell begins with a type that makes something (<c>Trial.Open</c>,
/// <c>Protocol.Triangle</c>, <c>Precision.Percent</c>) or with a word to choose from (<c>HopForm.Pellet</c>). What such a call gives back
/// has a type too, but nobody writes its name; those are left out of the list, as are the rooms that the others are built on. They
/// compile as ever when somebody does write them.
/// </summary>
internal static class OfferedNames
{
    private const BindingFlags Own = BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly string[] InnerRooms =
    [
        "Bitterness.Models", "BrewDay", "Display.Drawing", "Display.Figures", "Display.Tables", "Display.WriteUp", "Evidence", "Numbers",
        "Panel.Ballots", "Panel.Deciding", "Trials.",
    ];

    /// <summary>Made by a constructor, or of an inner room, and yet what a cell begins with.</summary>
    private static readonly Type[] Besides =
    [
        typeof(AbsorbanceReading), typeof(BitternessModels), typeof(ExactBinomial), typeof(IsomerisationKinetics), typeof(PanelAnswer),
        typeof(PanelPlan), typeof(PanelReading), typeof(PourOptions), typeof(TrialReport), typeof(TrialSummary),
    ];

    private static readonly FrozenSet<string> LeftOut = StartSetting.Library.Where(type => !type.IsNested && !Begins(type)).Select(NameOf)
        .Except(StartSetting.Library.Where(Begins).Select(NameOf)).ToFrozenSet();

    /// <summary>Whether a name is left out of the list.</summary>
    public static bool Hides(string name) => LeftOut.Contains(name);

    private static bool Begins(Type type) => Besides.Contains(type) || (!IsInner(type) && (type.IsEnum || Makes(type)));

    private static string NameOf(Type type) => type.Name.Split('`')[0];

    private static bool IsInner(Type type) =>
        InnerRooms.Any(room => type.Namespace!.StartsWith("SplitBatch." + room, StringComparison.Ordinal));

    private static bool Makes(Type type) => type.GetMembers(Own).Any(member =>
        member is not (Type or MethodInfo { IsSpecialName: true }) && !member.IsDefined(typeof(ExtensionAttribute)));
}
