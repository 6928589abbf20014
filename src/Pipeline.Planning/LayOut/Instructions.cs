using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>What to do, in a sentence a painter can act on.</summary>
internal static class Instructions
{
    /// <summary>A step, whatever the units: <c>Airbrush old brass on the suit, coat 1 of 2</c>; coats that go on wet are counted, <c>2 coats</c>.</summary>
    /// <param name="model">Whose.</param>
    /// <param name="step">The step.</param>
    /// <param name="pass">Which of its passes, from 0.</param>
    public static string Of(Model model, Step step, int pass)
    {
        var words = new List<string> { Deed(model, step) };
        if (step.Lays.FirstOrDefault()?.Layer is { } layer)
        {
            // what is hardly any paint on a brush or a sponge is no mist
            if (layer is { Body: Body.Mist, Method: Method.Airbrush or Method.Aerosol })
                words.Add("as a mist");
            if (layer.Coats > 1 && step.Work.Passes == 1)
                words.Add(Phrases.Counted(layer.Coats, "coat"));
        }

        if (Phrases.Coat(step, pass) is { Length: > 0 } coat)
            words.Add(coat);
        return string.Join(", ", words);
    }

    private static string Deed(Model model, Step step)
    {
        var areas = step.Areas.IsEmpty ? "" : Phrases.Areas(model, step.Areas);
        foreach (var deed in step.Deeds)
        {
            switch (deed)
            {
                case Abstractions.Deed.Lay { Layer: { Paint: not null } layer } when IsPlainCoat(layer):
                    return $"{Hand(layer.Method)} {layer.Name} on {areas}";
                case Abstractions.Deed.Lay { Layer: { Paint: not null } layer }:
                    return $"{Phrases.Capital(step.Verb)} {areas} with {layer.Name}{By(layer.Method)}";
                case Abstractions.Deed.PutMaskOn mask:
                    return $"{Phrases.Capital(step.Verb)} {areas} with {mask.Material.Name}{(IsNamed(step) ? $" ({mask.Mask})" : "")}";
                case Abstractions.Deed.TakeMaskOff:
                    return Phrases.Capital(Phrases.Step(model, step));
                case Abstractions.Deed.Join join:
                    return $"{Phrases.Capital(step.Verb)} {Phrases.Listed(join.Parts)}{(join.Glue is { } glue ? $" with {Glue(glue)}" : "")}";
                case Abstractions.Deed.Prepare prepare when (prepare.With ?? (prepare.Glue is { } with ? Glue(with) : null)) is { } product:
                    return $"{Phrases.Capital(step.Verb)} {areas} with {product}";
                case Abstractions.Deed.CleanBack back:
                    return $"{Phrases.Capital(step.Verb)} {areas} with {back.With}";
                case Abstractions.Deed.Strip strip:
                    return $"{Phrases.Capital(step.Verb)} {areas} with {strip.With}";
                default:
                    break;
            }
        }

        return Phrases.Capital($"{step.Verb} {areas}".TrimEnd());
    }

    /// <summary>The usual words for a glue.</summary>
    public static string Glue(Glue glue) => glue switch
    {
        Abstractions.Glue.Superglue => "superglue",
        Abstractions.Glue.FoamSafeSuperglue => "foam-safe superglue",
        Abstractions.Glue.Pva => "PVA",
        Abstractions.Glue.Epoxy => "epoxy",
        _ => "styrene cement",
    };

    private static bool IsPlainCoat(Layer layer) =>
        layer.Method is Method.Airbrush or Method.Brush or Method.Aerosol
        && layer.Role is LayerRole.Sealer or LayerRole.Undercoat or LayerRole.Colour or LayerRole.Varnish
        && layer.Technique is Technique.Plain or Technique.ClearColour;

    private static string Hand(Method method) => method switch
    {
        Method.Airbrush => "Airbrush",
        Method.Aerosol => "Spray",
        _ => "Brush",
    };

    private static string By(Method method) => method switch
    {
        Method.Airbrush => ", by airbrush",
        Method.Aerosol => ", from the can",
        _ => "",
    };

    private static bool IsNamed(Step step) => step.As != string.Join('+', step.Areas);
}
