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
    private readonly Shared? shared;

    internal Sequence(T[] items)
        : this(items.Length == 0 ? null : new Shared(items, items.Length), items.Length)
    {
    }

    private Sequence(Shared? shared, int count) => (this.shared, Count) = (shared, count);

    private ReadOnlySpan<T> Items => shared is null ? [] : shared.Room.AsSpan(0, Count);

    /// <inheritdoc/>
    public int Count { get; }

    /// <summary>True if there is nothing in it.</summary>
    public bool IsEmpty => Count == 0;

    /// <inheritdoc/>
    public T this[int index] => Items[index];

    /// <summary>This list with one more item at its end.</summary>
    public Sequence<T> With(T item)
    {
        if (shared is not null && shared.TryTake(Count))
        {
            shared.Room[Count] = item;
            return new Sequence<T>(shared, Count + 1);
        }

        var room = new T[Math.Max(4, 2 * (Count + 1))];
        Items.CopyTo(room);
        room[Count] = item;
        return new Sequence<T>(new Shared(room, Count + 1), Count + 1);
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
        public readonly T Current => list.shared!.Room[index];

        /// <summary>Goes to the next item; false after the last.</summary>
        public bool MoveNext() => ++index < list.Count;
    }

    // Room that grows with the newest list; whoever first takes the next free place may write there, others copy.
    private sealed class Shared(T[] room, int taken)
    {
        private int taken = taken;

        public T[] Room => room;

        public bool TryTake(int place) => place < room.Length && Interlocked.CompareExchange(ref taken, place + 1, place) == place;
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
