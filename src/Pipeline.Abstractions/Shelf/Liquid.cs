namespace Pipeline.Abstractions;

/// <summary>A liquid on the bench that cleans, moves or takes off. What it does to a coat depends on the coat.</summary>
public enum Liquid
{
    /// <summary>Plain water.</summary>
    Water,

    /// <summary>Water with a little washing-up liquid.</summary>
    SoapyWater,

    /// <summary>A water-based alkaline paint remover.</summary>
    AlkalineCleaner,

    /// <summary>Isopropyl alcohol.</summary>
    Isopropyl,

    /// <summary>White spirit low in aromatics, odourless thinner, enamel thinner.</summary>
    WhiteSpirit,

    /// <summary>Turpentine and thinners rich in aromatics.</summary>
    Turpentine,

    /// <summary>Lacquer thinner.</summary>
    LacquerThinner,

    /// <summary>Acetone.</summary>
    Acetone,

    /// <summary>Superglue remover, usually of the acetone type.</summary>
    Debonder,

    /// <summary>Decal setter.</summary>
    DecalSetter,

    /// <summary>Decal softener.</summary>
    DecalSoftener,
}

/// <summary>What is known of the liquids whatever they meet.</summary>
public static class Liquids
{
    /// <summary>What kind of carrier a liquid is: which families it goes after.</summary>
    public static Carrier Carrier(this Liquid liquid) => liquid switch
    {
        Liquid.Isopropyl => Abstractions.Carrier.Alcohol,
        Liquid.WhiteSpirit or Liquid.Turpentine => Abstractions.Carrier.Spirit,
        Liquid.LacquerThinner or Liquid.Acetone or Liquid.Debonder => Abstractions.Carrier.Solvent,
        _ => Abstractions.Carrier.Water,
    };

    /// <summary>True for liquids whose vapour can catch fire; they have no place in an ultrasonic bath.</summary>
    public static bool IsFlammable(this Liquid liquid) =>
        liquid.Carrier() is Abstractions.Carrier.Alcohol or Abstractions.Carrier.Spirit or Abstractions.Carrier.Solvent;

    /// <summary>As a person says it: <c>white spirit</c>.</summary>
    public static string Spoken(this Liquid liquid) => liquid switch
    {
        Liquid.SoapyWater => "soapy water",
        Liquid.AlkalineCleaner => "alkaline cleaner",
        Liquid.WhiteSpirit => "white spirit",
        Liquid.LacquerThinner => "lacquer thinner",
        Liquid.DecalSetter => "decal setter",
        Liquid.DecalSoftener => "decal softener",
        Liquid.Isopropyl => "isopropyl",
        Liquid.Turpentine => "turpentine",
        Liquid.Acetone => "acetone",
        Liquid.Debonder => "debonder",
        _ => "water",
    };
}
