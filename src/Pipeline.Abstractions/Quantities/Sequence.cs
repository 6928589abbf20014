using System.Collections;
using System.Runtime.CompilerServices;

namespace Pipeline.Abstractions;

/// <summary>
/// An immutable list that equals another with equal items in the same order. The default value is the empty list.
/// </summary>
[CollectionBuilder(typeof(Sequence), nameof(Sequence.Create))]
public readonly struct Sequence<T> : IReadOnlyList<T>, IEquatable<Sequence<T>>
{
    // Shared with the lists this one grew from: each sees only its own count, so a long list of layers is not copied at every coat.
    private readonly T[]? room;

    internal Sequence(T[] items)
        : this(items.Length == 0 ? null : items, items.Length)
    {
    }

    private Sequence(T[]? room, int count) => (this.room, Count) = (room, count);

    private ReadOnlySpan<T> Items => room.AsSpan(0, Count);

    /// <inheritdoc/>
    public int Count { get; }

    /// <summary>True if there is nothing in it.</summary>
    public bool IsEmpty => Count == 0;

    /// <inheritdoc/>
    public T this[int index] => Items[index];

    /// <summary>This list with one more item at its end.</summary>
    public Sequence<T> With(T item)
    {
        // whoever first takes the next free place may write there, others copy
        if (room is not null && Count < room.Length && item is not null && default(T) is null
            && Interlocked.CompareExchange(ref room[Count], item, default!) is null)
            return new Sequence<T>(room, Count + 1);
        var larger = new T[Math.Max(4, 2 * (Count + 1))];
        Items.CopyTo(larger);
        larger[Count] = item;
        return new Sequence<T>(larger, Count + 1);
    }

    /// <summary>This list without the items that match.</summary>
    public Sequence<T> Without(Predicate<T> match) => new(Array.FindAll(Items.ToArray(), item => !match(item)));

    /// <inheritdoc/>
    public bool Equals(Sequence<T> other) => Items.SequenceEqual(other.Items);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is Sequence<T> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in Items)
            hash.Add(item);
        return hash.ToHashCode();
    }

    /// <summary>Equal items in the same order.</summary>
    public static bool operator ==(Sequence<T> left, Sequence<T> right) => left.Equals(right);

    /// <summary>Not equal items in the same order.</summary>
    public static bool operator !=(Sequence<T> left, Sequence<T> right) => !left.Equals(right);

    /// <summary>Walks the items without a heap allocation.</summary>
    public Enumerator GetEnumerator() => new(this);

    IEnumerator<T> IEnumerable<T>.GetEnumerator()
    {
        for (var i = 0; i < Count; i++)
            yield return this[i];
    }

    IEnumerator IEnumerable.GetEnumerator() => ((IEnumerable<T>)this).GetEnumerator();

    /// <summary>The items, parted by commas.</summary>
    public override string ToString() => string.Join(", ", (IEnumerable<T>)this);

    /// <summary>Steps through a sequence.</summary>
    public struct Enumerator
    {
        private readonly Sequence<T> list;
        private int index;

        internal Enumerator(Sequence<T> list) => (this.list, index) = (list, -1);

        /// <summary>The item it stands at; call <see cref="MoveNext"/> first.</summary>
        public readonly T Current => list.room![index];

        /// <summary>Goes to the next item; false after the last.</summary>
        public bool MoveNext() => ++index < list.Count;
    }
}

/// <summary>Makes sequences.</summary>
public static class Sequence
{
    /// <summary>A sequence of the items; what a collection expression calls.</summary>
    public static Sequence<T> Create<T>(ReadOnlySpan<T> items) => new([.. items]);

    /// <summary>A sequence of the items of a list.</summary>
    public static Sequence<T> ToSequence<T>(this IEnumerable<T> items) => new([.. items]);
}
