package evenrise.model.project;

/** A line conductor of the supply. The letters are those of the files; the order is the order of rotation. */
public enum Phase {
    A,
    B,
    C
}
