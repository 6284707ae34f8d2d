package evenrise.model.measured;

/** What all that was measured comes to. */
public enum SiteVerdict {
    UNSAFE("unsafe", "A limit is passed or may be, or what keeps people safe is missing. Do not use the plant so."),
    DIFFERS("differs", "Something is other than planned, by more than meters and model may be off."),
    NOT_ENOUGH("not enough measured", "Nothing that was measured is other than planned, but too little was."),
    AS_PLANNED("as planned", "What was measured is as planned, within what meters and model may be off.");

    private final String words;
    private final String meaning;

    SiteVerdict(String words, String meaning) {
        this.words = words;
        this.meaning = meaning;
    }

    public String words() {
        return words;
    }

    public String meaning() {
        return meaning;
    }
}
