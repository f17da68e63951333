namespace SplitBatch.Brewing;

/// <summary>Where in the brew a charge goes in, which settles what its time means.</summary>
public enum AdditionStage
{
    /// <summary>Into the kettle as the wort runs in. Time: minutes in the hot wort before the boil starts.</summary>
    FirstWort,

    /// <summary>Into the boil. Time: minutes left to flame-out.</summary>
    Boil,

    /// <summary>Into the hot stand after the boil. Time: minutes after flame-out.</summary>
    Whirlpool,

    /// <summary>While the wort is being cooled. Time: minutes after flame-out.</summary>
    Cooling,

    /// <summary>After the kettle: into the fermenter or the finished beer. Time is not used.</summary>
    Fermenter,
}
