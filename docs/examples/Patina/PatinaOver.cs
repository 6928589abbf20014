using Pipeline.Abstractions;

namespace Tidewater.Patina;

/// <summary>What a patina goes over, and what goes over it. Of every other pair the rows of waterborne acrylic hold.</summary>
public sealed class PatinaOver : Catalogue<CoatOver>
{
    private const string Invented = "invented for this example";

    /// <inheritdoc/>
    public override IEnumerable<CoatOver> Entries =>
    [
        // the fluid beads on enamel and oil, cured or not
        new CoatOver { Coat = "patina fluid", Over = "enamel", WhenDry = Bearing.Never, WhenCured = Bearing.Never, Source = Invented },
        new CoatOver { Coat = "patina fluid", Over = "oil", WhenDry = Bearing.Never, WhenCured = Bearing.Never, Source = Invented },
        // strong solvent turns the green brown
        new CoatOver { Coat = "lacquer varnish", Over = "patina fluid", WhenDry = Bearing.Never, WhenCured = Bearing.Mist, Source = Invented },
    ];
}
