namespace Pipeline.Abstractions;

/// <summary>How much paint one task takes.</summary>
/// <param name="OnAndPast">mL laid, with what misses the piece.</param>
/// <param name="Loads">Fillings of the cup; 0 where there is no cup.</param>
/// <param name="Millilitres">All of it, with what stays in cup, brush or palette.</param>
public readonly record struct PaintNeed(double OnAndPast, int Loads, double Millilitres)
{
    /// <summary>An airbrush cup of 7 mL, where the file does not say (common practice).</summary>
    public const double CupMillilitres = 7;

    /// <summary>No cup is filled fuller (common practice).</summary>
    public const double CupFill = 0.85;

    /// <summary>What stays in the cup at each load: 0.3–1 mL (common practice).</summary>
    public const double DeadLossMillilitres = 0.5;

    /// <summary>Drops of water to the mL from a medicine dropper held upright (USP general chapter 1101: 20 drops weigh 0.9–1.1 g); those of a bottle may differ.</summary>
    public const int DropsPerMillilitre = 20;

    // What a brush or sponge and its palette keep, for each task (common practice).
    private const double PaletteLossMillilitres = 0.2;

    // A piece of this size and more is sprayed like terrain: less goes past it.
    private const double TerrainSquareCentimetres = 150;

    /// <summary>What a layer on an area of each of some units takes.</summary>
    /// <param name="layer">The layer, with its coats.</param>
    /// <param name="area">The area of one unit that gets it.</param>
    /// <param name="piece">The size of the whole piece, which decides how much spray goes past it.</param>
    /// <param name="units">How many units are done one after another, close together.</param>
    /// <param name="cup">What the airbrush's cup holds; null for <see cref="CupMillilitres"/>.</param>
    public static PaintNeed Of(Layer layer, SurfaceSize area, SurfaceSize piece, int units, Volume? cup = null)
    {
        ArgumentNullException.ThrowIfNull(layer);
        if (layer.Paint is not { } paint)
            return default;
        var net = Spreading.Millilitres(
            area.SquareCentimetres * Coverage(layer.Technique) * units,
            DryFilmMicrometres(layer) * layer.Coats,
            VolumeSolids(paint, layer.Method),
            TransferEfficiency(layer.Method, piece, units));
        if (layer.Method != Method.Airbrush)
            return new PaintNeed(net, 0, net + (layer.Method == Method.Aerosol ? 0 : PaletteLossMillilitres));
        // of the smallest cup at least half is sprayed
        var full = (cup?.Millilitres ?? CupMillilitres) * CupFill;
        var loads = Math.Max(1, (int)Math.Min(int.MaxValue, Math.Ceiling((net / Math.Max(full - DeadLossMillilitres, Math.Max(full / 2, 0.01))) - 1e-9)));
        return new PaintNeed(net, loads, net + (loads * DeadLossMillilitres));
    }

    /// <summary>
    /// Dry film of one coat in µm (common practice): colour and undercoat 15, metallic 5, varnish 12, sealer 20, effect 3; a heavy coat twice,
    /// a mist half as thick.
    /// </summary>
    public static double DryFilmMicrometres(Layer layer)
    {
        ArgumentNullException.ThrowIfNull(layer);
        var thin = layer.Role switch
        {
            LayerRole.Sealer => 20,
            LayerRole.Varnish => 12,
            LayerRole.Effect => 3,
            _ => layer.IsMetallic ? 5 : 15,
        };
        return layer.Role == LayerRole.Effect ? thin
            : layer.Body switch { Body.Heavy => thin * 2, Body.Mist => thin * 0.5, _ => thin };
    }

    /// <summary>
    /// The part of the area that gets paint (common practice): chips a tenth, edges, recesses and streaks a fifth, anything else all of it.
    /// </summary>
    public static double Coverage(Technique technique) => technique switch
    {
        Technique.Sponge => 0.1,
        Technique.DryBrush or Technique.PinWash or Technique.PanelLine or Technique.Streak => 0.2,
        _ => 1,
    };

    /// <summary>
    /// The part of the volume that stays (common practice): 30 % as sold, 10 % for metallics, less the thinner of the mix.
    /// A paint sprayed straight from its pot is taken as thin enough to spray: 16 %, or 8 %.
    /// </summary>
    public static double VolumeSolids(Paint paint, Method method)
    {
        ArgumentNullException.ThrowIfNull(paint);
        var isThinned = paint.Recipe?.Thinner is not null;
        if (method == Method.Airbrush && !isThinned)
            return paint.IsMetallic ? 0.08 : 0.16;
        // a mix of nothing but thinner has no solids at all; it is not for us to divide by them
        return Math.Max(0.01, Spreading.Thinned(paint.IsMetallic ? 0.10 : 0.30, paint.Recipe?.Thinner?.ShareOfMix ?? 0));
    }

    /// <summary>
    /// The part that lands on the piece (common practice): airbrush on terrain 0.45, on figures in a row 0.30, on a single one 0.20;
    /// rattle can 0.30; sponge 0.6; brush 0.8.
    /// </summary>
    public static double TransferEfficiency(Method method, SurfaceSize piece, int units) => method switch
    {
        Method.Airbrush => piece.SquareCentimetres >= TerrainSquareCentimetres ? 0.45 : units > 1 ? 0.30 : 0.20,
        Method.Aerosol => 0.30,
        Method.Sponge => 0.60,
        _ => 0.80,
    };
}
