using CsCheck;
using Pipeline.Abstractions;

namespace Pipeline.Tests.Units.Quantities;

public class SequenceTests
{
    [Fact]
    public void Two_lists_that_grow_from_the_same_one_do_not_see_each_other()
    {
        Sequence<int> layers = [1];
        var gloss = layers.With(2);
        var matt = layers.With(3);
        var longer = gloss.With(4);

        layers.Should().Equal(1);
        gloss.Should().Equal(1, 2);
        matt.Should().Equal(1, 3);
        longer.Should().Equal(1, 2, 4);
    }

    [Fact]
    public void Growing_in_any_order_gives_what_a_copied_list_gives() =>
        Gen.Select(Gen.Int[0, 30], Gen.Int).List[1, 60].Sample(moves =>
        {
            var grown = new List<(Sequence<int> Sequence, List<int> Copy)> { ([], []) };
            foreach (var (from, item) in moves)
            {
                var (sequence, copy) = grown[from % grown.Count];
                grown.Add((sequence.With(item), [.. copy, item]));
            }

            return grown.All(pair => pair.Sequence.SequenceEqual(pair.Copy) && pair.Sequence == pair.Copy.ToSequence());
        });

    [Fact]
    public void The_default_is_the_empty_list() => default(Sequence<string>).Should().BeEmpty().And.BeEquivalentTo(Array.Empty<string>());
}
