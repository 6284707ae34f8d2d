package evenrise.model.event;

/** What the operator is shown of the whole system. It is what the control believes: no contact reports back. */
public enum Display {
    DOWN("down"),
    COMING_UP("coming up"),
    UP("up"),
    /** Commanded on, but not all that is switched is on. */
    PARTLY_UP("partly up"),
    GOING_DOWN("going down"),
    /** Commanded off, but something could not be switched off. */
    NOT_CLEAR("not clear"),
    EMERGENCY("emergency"),
    SUPPLY_LOW("supply low"),
    /** The supply is back; the control waits for it to be steady. */
    WAITING("waiting for supply");

    private final String words;

    Display(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
