using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins;

/// <summary>What every verb that lays a coat has in common: the layer, the tool, set-up and put-away, and whether coats dry between.</summary>
internal static class Laying
{
    /// <summary>The bench name of the one spraying tool that holds a load and must be cleaned out.</summary>
    public const string Airbrush = "airbrush";

    /// <summary>The intent of a step that lays one or more coats of a paint on the areas of a job.</summary>
    /// <param name="job">What the step acts on.</param>
    /// <param name="layer">The layer each area gets.</param>
    /// <param name="perCoat">Attended time for one coat on one unit.</param>
    /// <param name="overspray">Areas overspray may reach because the painter means it.</param>
    /// <param name="putAway">Attended minutes to put brush or sponge away after a lot.</param>
    public static Intent Lay(Job job, Layer layer, Effort perCoat, AreaNames? overspray = null, double putAway = 2)
    {
        var meant = overspray?.Names ?? [];
        return new Intent([new Deed.Lay(layer, meant)], WorkOf(job, layer, perCoat.For(job.Size), putAway))
        {
            Cautions = layer.Family is { } family ? [.. Cautions.Of(family, layer.Method)] : [],
        };
    }

    /// <summary>A layer of a paint, as thick as the method usually lays it unless the file says.</summary>
    /// <exception cref="ParticularException">Less than one coat, or more than anyone lays in one step.</exception>
    public static Layer LayerOf(
        Paint paint, LayerRole role, Method method, Body? body = null, int coats = 1, Technique technique = Technique.Plain)
    {
        if (coats is < 1 or > 20)
            throw new ParticularException("coats", FormattableString.Invariant($"{coats} coats make no sense; say 1 to 20."));
        return Layer.Of(paint, role, method, body ?? Layer.UsualBody(method), coats, technique);
    }

    private static Work WorkOf(Job job, Layer layer, Attended perCoat, double putAway)
    {
        var passes = MustDryBetween(layer) ? layer.Coats : 1;
        var perPass = perCoat * (layer.Coats / passes);
        var work = new Work
        {
            PerUnit = perPass,
            Passes = passes,
            NeedsDryingPlace = true,
        };
        return layer.Method switch
        {
            // getting the airbrush out is paid at its first load of a sitting, cleaning it out between loads: see the clean-out times
            Method.Airbrush => work with { SetUp = new Attended(3), Tool = Airbrush, Load = layer.Paint },
            // one pass over a tray takes about half of what the pieces would take one by one; there may be more trays than one
            Method.Aerosol => work with { PerUnit = perPass * 0.5, SetUp = new Attended(3), PutAway = new Attended(2) },
            _ => work with { SetUp = new Attended(2), PutAway = new Attended(putAway) },
        };
    }

    // Coats that go on wet, or while the one before is still open, are laid in one go.
    private static bool MustDryBetween(Layer layer) =>
        !layer.IsWetInWet && layer.Family?.RecoatOpen is null && layer.TimeTo(DryingState.Recoatable) is not null;
}
