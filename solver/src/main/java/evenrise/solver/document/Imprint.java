package evenrise.solver.document;

/**
 * What stands on every page.
 *
 * @param date as it is to be printed
 * @param projectSha256 of the project file
 */
public record Imprint(String project, String revision, String date, String projectSha256, String version) {
    private static final int LONGEST = 120;

    public Imprint {
        project = Plain.text(project, LONGEST);
        revision = Plain.text(revision, LONGEST);
        date = Plain.text(date, LONGEST);
    }

    /** Enough of the hash to tell two files apart. */
    public String shortHash() {
        return projectSha256.substring(0, Math.min(12, projectSha256.length()));
    }
}
