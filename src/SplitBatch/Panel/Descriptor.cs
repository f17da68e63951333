namespace SplitBatch.Panel;

/// <summary>A word for what is tasted, with the beginnings of the words that count as it.</summary>
/// <param name="Name">The descriptor as it is shown.</param>
/// <param name="Stems">Beginnings of words, in lower case: "grass" catches grass, grassy and grassier. A stem with a space is a phrase.</param>
/// <param name="Except">Beginnings that do not count although a stem catches them: "pineapple" is no pine.</param>
public sealed record Descriptor(string Name, IReadOnlyList<string> Stems, IReadOnlyList<string>? Except = null)
{
    /// <summary>Descriptors that tasters of hopped beer use; common practice, no source. Add your own.</summary>
    public static IReadOnlyList<Descriptor> Common { get; } =
    [
        new("bitter", ["bitter"]),
        new("harsh or astringent", ["harsh", "astring", "rough", "drying", "puckering", "tannic", "tannin"]),
        new("smooth", ["smooth", "soft", "round", "mellow"]),
        new("lingering", ["linger", "long finish", "aftertaste"]),
        new("grassy or vegetal", ["grass", "veget", "leafy", "hay", "chlorophyll"]),
        new("citrus", ["citr", "lemon", "lime", "orange", "grapefruit", "tangerine"]),
        new("fruity", ["fruit", "tropic", "peach", "berry", "mango", "melon", "apricot", "pineapple"]),
        new("floral", ["flor", "flower", "rose", "perfum"], ["rosemary"]),
        new("herbal or spicy", ["herb", "spic", "pepper", "mint"]),
        new("resinous or pine", ["resin", "pine", "dank", "woody"], ["pineapple"]),
        new("earthy", ["earth", "musty", "mould", "mold"]),
        new("malty", ["malt", "bread", "biscuit", "caramel", "toast", "grain"]),
        new("sweet", ["sweet", "sugar", "honey"]),
        new("dry", ["dry", "crisp"], ["drying"]),
        new("sour", ["sour", "acid", "tart"]),
        new("full", ["full", "thick", "creamy", "heavy"], ["fully"]),
        new("thin", ["thin", "watery"], ["thing", "think"]),
        new("papery or stale", ["paper", "cardboard", "stale", "oxid"]),
        new("cheesy", ["chees", "sweaty"]),
        new("sulphury", ["sulph", "sulf", "egg"]),
        new("buttery", ["butter", "diacetyl"]),
    ];
}
