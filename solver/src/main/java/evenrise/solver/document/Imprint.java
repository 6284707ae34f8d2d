package evenrise.solver.document;

import evenrise.model.project.TitleBlock;
import java.util.ArrayList;
import java.util.List;

/**
 * What stands on every page.
 *
 * @param date as it is to be printed
 * @param projectSha256 of the project file
 * @param title what else stands in the title block
 */
public record Imprint(
        String project, String revision, String date, String projectSha256, String version, TitleBlock title) {
    private static final int LONGEST = 120;

    public Imprint {
        project = Plain.text(project, LONGEST);
        revision = Plain.text(revision, LONGEST);
        date = Plain.text(date, LONGEST);
    }

    /** Without anything more in the title block. */
    public Imprint(String project, String revision, String date, String projectSha256, String version) {
        this(project, revision, date, projectSha256, version, TitleBlock.NONE);
    }

    /** What the title block states, by its headings. */
    public List<Fact> titles() {
        List<Fact> stated = new ArrayList<>();
        title.client().ifPresent(text -> stated.add(line("Client", text)));
        title.site().ifPresent(text -> stated.add(line("Site", text)));
        title.number().ifPresent(text -> stated.add(line("Job number", text)));
        title.issuedFor().ifPresent(text -> stated.add(line("Issued for", text)));
        title.issuedBy().ifPresent(text -> stated.add(line("Issued by", text)));
        title.drawnBy().ifPresent(text -> stated.add(line("Drawn by", text)));
        title.checkedBy().ifPresent(text -> stated.add(line("Checked by", text)));
        return stated;
    }

    private static Fact line(String heading, String text) {
        return new Fact(heading, Plain.text(text, LONGEST), "");
    }

    /** A revision as it is printed; nobody's name is empty. */
    public record Issued(String revision, String date, String what, String by) {}

    /** Revisions so far, the last one first, with nothing in them that turns text. */
    public List<Issued> revisions() {
        List<Issued> all = new ArrayList<>();
        title.revisions()
                .forEach(each -> all.add(
                        0,
                        new Issued(
                                Plain.text(each.revision(), LONGEST),
                                Plain.text(each.date(), LONGEST),
                                Plain.text(each.what(), LONGEST),
                                Plain.text(each.by().orElse(""), LONGEST))));
        return all;
    }

    /** Number of a sheet: {@code E9.2}. */
    public String sheet(int section, int page) {
        return sheet("", section, page);
    }

    /** Of a set beside the documents of a plan: {@code EW9.2}. */
    public String sheet(String kind, int section, int page) {
        return Plain.text(title.sheetPrefix(), LONGEST) + kind + section + "." + page;
    }

    /** Enough of the hash to tell two files apart. */
    public String shortHash() {
        return projectSha256.substring(0, Math.min(12, projectSha256.length()));
    }
}
