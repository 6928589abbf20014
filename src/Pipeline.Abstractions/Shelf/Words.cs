namespace Pipeline.Abstractions;

/// <summary>How much a dry layer shines. Bands at 60°: matt below 10 gloss units, satin to 70, gloss above (common practice after ISO 2813).</summary>
public enum Sheen
{
    /// <summary>Below 10 gloss units at 60°.</summary>
    Matt,

    /// <summary>From 10 to 70 gloss units at 60°.</summary>
    Satin,

    /// <summary>Above 70 gloss units at 60°.</summary>
    Gloss,

    /// <summary>Polished metal: reflects a picture.</summary>
    Mirror,
}

/// <summary>How a product gets onto a piece.</summary>
public enum Method
{
    /// <summary>A brush; touches only what it is led over.</summary>
    Brush,

    /// <summary>An airbrush; overspray reaches what is not masked.</summary>
    Airbrush,

    /// <summary>A rattle can; overspray reaches what is not masked.</summary>
    Aerosol,

    /// <summary>A sponge.</summary>
    Sponge,

    /// <summary>A spatula, fingers, tweezers.</summary>
    Hand,
}

/// <summary>Drying states in the words of ISO 9117 and ASTM D1640, as the trade uses them.</summary>
public enum DryingState
{
    /// <summary>A light finger takes no paint away.</summary>
    TouchDry,

    /// <summary>Takes the next coat without sagging or lifting.</summary>
    Recoatable,

    /// <summary>Can be held and worked on.</summary>
    Handleable,

    /// <summary>Hard-dry: tape comes off without a mark.</summary>
    MaskSafe,

    /// <summary>Bears an enamel or oil effect, its thinner and rubbing.</summary>
    WashSafe,

    /// <summary>Through-dry and as hard as it will be.</summary>
    Cured,
}

/// <summary>What leaves the film as it dries; decides how climate changes its times and what dissolves it.</summary>
public enum Carrier
{
    /// <summary>Nothing leaves, or it does not matter.</summary>
    None,

    /// <summary>Water: slow in damp air.</summary>
    Water,

    /// <summary>Strong ("hot") solvent such as lacquer thinner.</summary>
    Solvent,

    /// <summary>White spirit and its like.</summary>
    Spirit,

    /// <summary>Alcohol.</summary>
    Alcohol,

    /// <summary>Sets by reaction, as epoxy does.</summary>
    Reaction,
}
