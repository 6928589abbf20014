using Pipeline.Abstractions;

namespace Pipeline.Plugins.Safety;

/// <summary>
/// The usual cautions, in one place. They are general information, not a safety assessment: the product label and safety data sheet,
/// local rules and trained advice come first.
/// </summary>
internal static class Cautions
{
    public static Caution Blades { get; } = new(
        "blades",
        "Cut away from yourself, cap blades and collect old ones in a sharps tin.");

    public static Caution HarmfulDust { get; } = new(
        "harmful-dust",
        "The dust harms lungs. Work resin wet and wipe up; fibreboard and wood dry, with extraction and a particle respirator that fits. "
        + "The safety data sheet says which.");

    public static Caution SolventVapour { get; } = new(
        "solvent-vapour",
        "Vapour harms and can catch fire: air the room to the outside, no flame or heater, close pots. Dust masks do not stop vapour. "
        + "Label and safety data sheet come first.");

    public static Caution SprayMist { get; } = new(
        "spray-mist",
        "Spray with extraction to the outside and breathing protection that suits the product. Check label and safety data sheet.");

    public static Caution PressurisedCan { get; } = new(
        "pressurised-can",
        "Propellant is flammable: outdoors or with extraction, away from flame and heat. Follow the can's label.");

    public static Caution TwoPartCoating { get; } = new(
        "two-part-coating",
        "Hardeners with isocyanate are for trained people with air-fed protection; the EU asks for training by law. "
        + "Read the safety data sheet before opening the can.");

    public static Caution Superglue { get; } = new(
        "superglue",
        "Bonds skin and eyes in seconds, heats up on cotton, and its vapour stings: gloves that suit, eye protection, air. See the label.");

    public static Caution SkinSensitiser { get; } = new(
        "skin-sensitiser",
        "Uncured epoxy and ultraviolet-curing resin can cause a lasting allergy: nitrile gloves, changed when wet. "
        + "See the safety data sheet.");

    public static Caution UltravioletLight { get; } = new(
        "ultraviolet-light",
        "Do not look into the lamp; keep its cover closed. Follow its instructions.");

    public static Caution UltrasonicBath { get; } = new(
        "ultrasonic-bath",
        "Water-based liquids only: a flammable one in the tank is a fire and explosion risk. Follow the bath's instructions.");

    public static Caution OilyRags { get; } = new(
        "oily-rags",
        "Rags with drying oil can heat up by themselves: spread them flat or drown them in a closed metal tin of water.");

    public static Caution Waste { get; } = new(
        "waste",
        "No solvent, resin rinse or paint sludge down the drain: take it to the local collection point.");

    public static Caution Heat { get; } = new(
        "heat",
        "Keep solvent vapour away from the heat source and do not leave it alone. Many plastics and resins warp above 45 °C.");

    /// <summary>The cautions of a liquid worked with by hand.</summary>
    public static IEnumerable<Caution> Of(Liquid liquid) => liquid.IsFlammable() ? [SolventVapour, Waste] : [];

    /// <summary>The cautions of a glue.</summary>
    public static IEnumerable<Caution> Of(Glue glue) => glue switch
    {
        Glue.Superglue or Glue.FoamSafeSuperglue => [Superglue],
        Glue.Epoxy => [SkinSensitiser],
        Glue.StyreneCement => [SolventVapour],
        _ => [],
    };

    /// <summary>The cautions of putting a family on with a method.</summary>
    public static IEnumerable<Caution> Of(Family family, Method method)
    {
        if (method is Method.Airbrush or Method.Aerosol)
            yield return SprayMist;
        if (method == Method.Aerosol)
            yield return PressurisedCan;
        if (family.Carrier is Carrier.Solvent or Carrier.Spirit or Carrier.Alcohol)
            yield return SolventVapour;
        if (family.Carrier == Carrier.Spirit)
            yield return OilyRags;
        if (family.HasIsocyanate)
            yield return TwoPartCoating;
        else if (family.Carrier == Carrier.Reaction)
            yield return SkinSensitiser;
    }
}
