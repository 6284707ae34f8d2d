package evenrise.model.project;

/** What a command does that takes off a shutdown group which loads of other groups need. */
public enum NeededGroup {
    /** It is refused. */
    REFUSE,
    /** What needs the group goes off with it, before it. */
    TAKE_ALONG
}
