package evenrise.solver.intake;

/**
 * What the drawings call a piece, and what the list remarks of it.
 *
 * @param tag empty where there is none
 * @param notes empty where there are none
 */
record Label(String tag, String notes) {
    static final Label NONE = new Label("", "");

    Label noted(String note) {
        return new Label(tag, notes.isEmpty() ? note : notes + "; " + note);
    }
}
