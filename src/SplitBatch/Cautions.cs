namespace SplitBatch;

/// <summary>
/// Where someone can get hurt, step by step: the one reviewed set, which notebooks, sheets, the README of a new trial, the workshop's
/// guide and write-ups all print. It is no training and no law: each step defers to local codes and to people who are licensed for it.
/// </summary>
public static class Cautions
{
    /// <summary>Boiling wort.</summary>
    public static Caution AtTheKettle { get; } = new(
        "At the kettle",
        "Boiling wort scalds, and it foams over when hops go in: add them a little at a time, stand back, stay with the kettle, and never "
            + "seal a vessel that boils.",
        "Gas burners make carbon monoxide, which nobody can smell. Use them outdoors only, never in a garage or a cellar.",
        "Never let an electric element run dry, keep plugs and controllers above and away from liquids, and use an outlet with a "
            + "residual-current device (RCD or GFCI).",
        "Local fire, gas and electrical codes and licensed fitters come before this page.");

    /// <summary>Fermenting, packaging and dispensing.</summary>
    public static Caution InTheCellar { get; } = new(
        "In the cellar",
        "Fermentation, kegs and dry ice give off carbon dioxide, which gathers near the floor and can kill in a closed room. Air the "
            + "room, and never sleep in it or put your head into a vessel.",
        "Bottles and kegs hold pressure. Stay below what the vessel is rated for, use a regulator and a relief valve, measure the sugar, "
            + "and discard chipped or non-pressure glass.",
        "Local rules for pressure vessels and compressed gas, and licensed suppliers, come before this page.");

    /// <summary>Cleaning and sanitising.</summary>
    public static Caution WhenCleaning { get; } = new(
        "When cleaning",
        "Caustic and acid burn skin and eyes: wear gloves and goggles, and add them to water, never water to them.",
        "Never let chlorine (bleach) meet an acid: together they give off chlorine, a poisonous gas. Rinse well between cleaners, and "
            + "never mix two.",
        "The maker's safety data sheet and local rules come before this page.");

    /// <summary>Measuring bitterness with solvent and acid.</summary>
    public static Caution InTheLaboratory { get; } = new(
        "In the laboratory",
        "Measuring bitterness is work for trained people with a fume hood. If you have neither, send the bottles to a laboratory.",
        "Iso-octane is highly flammable, its vapour is harmful, and it can kill if it is swallowed and gets into the lungs. Keep it from "
            + "flames, sparks and static: earth metal containers, pour slowly, and pipette with a bulb, never by mouth.",
        "Hydrochloric acid burns skin and eyes: goggles, gloves, and acid into water, never water into acid.",
        "Shaking builds pressure: vent the tube away from the face. Centrifuge only in sealed tubes, in a rotor made for them, in a "
            + "machine that is approved for flammable solvents.",
        "The lamp's ultraviolet light harms eyes: keep the cell compartment closed while it is on.",
        "Collect solvent and acid as waste; none goes down the drain. Nothing that has touched the solvent is tasted.",
        "The laboratory's own licensed practice and local rules come before this page.");

    /// <summary>Serving alcohol to people for a test.</summary>
    public static Caution AtTheTasting { get; } = new(
        "At the tasting",
        "Adults only, of the age that local law sets for alcohol; check it.",
        "Nobody should taste who is or may be pregnant, is nursing, takes medicine that does not go with alcohol, or has been told not to "
            + "drink. Ask beforehand and in private, and accept a no without a reason.",
        "Nobody who tasted drives, rides or works with machines afterwards. Agree on the way home before the first cup.",
        "Name the allergens before the first cup. Saying what is in the beers must not say which is which.",
        "Serve small amounts with water and food, and give people something to spit into. Anybody may stop at any time.",
        "Serve in plastic or small tumblers, and clear broken glass at once.",
        "Local law on serving alcohol and on home-brewed beer, and whoever is licensed for the place, come before this page.");

    /// <summary>What is done with people's answers.</summary>
    public static Caution WithPeoplesAnswers { get; } = new(
        "With people's answers",
        "Tell people beforehand what you will do with their answers, and ask whether they agree. Keep codes and not names, and keep the "
            + "list of who is who apart, or tear it up.",
        "Publish counts, and single answers or words only with consent. Take out the answers of anybody who asks for it before the count "
            + "is published.",
        "Local law on personal data comes before this page.");

    /// <summary>All of them, in the order of a trial.</summary>
    public static IReadOnlyList<Caution> All { get; } = [AtTheKettle, InTheCellar, WhenCleaning, InTheLaboratory, AtTheTasting,
        WithPeoplesAnswers];
}
