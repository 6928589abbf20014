using Pipeline.Abstractions;

namespace Pipeline.Plugins.Basing;

/// <summary>What white glue and paste hold on a base: spread by hand, dry as texture paste is.</summary>
internal static class Paste
{
    public static Intent Lay(Job job, string name, LayerRole role, Body body, Effort perUnit)
    {
        var paste = Families.For(job, Families.TexturePaste);
        return new(
            [
                new Deed.Lay(new Layer
                {
                    Step = -1,
                    Name = name,
                    Family = paste,
                    Role = role,
                    Method = Method.Hand,
                    Body = body,
                    Sheen = Sheen.Matt,
                    Drying = body == Body.Heavy ? paste.Heavy : paste.Thin,
                }),
            ],
            new Work
            {
                PerUnit = perUnit.For(job.Size),
                SetUp = new Attended(3),
                PutAway = new Attended(3),
                NeedsDryingPlace = true,
            });
    }
}
