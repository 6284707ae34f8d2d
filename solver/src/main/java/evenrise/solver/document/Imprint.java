package evenrise.solver.document;

import evenrise.model.project.TitleBlock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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
        return titles(SheetWords.in(SheetLanguage.EN));
    }

    /** The same with headings of a language. */
    public List<Fact> titles(SheetWords words) {
        Map<String, Optional<String>> stated = new LinkedHashMap<>();
        stated.put("client", title.client());
        stated.put("site", title.site());
        stated.put("number", title.number());
        stated.put("issued-for", title.issuedFor());
        stated.put("issued-by", title.issuedBy());
        stated.put("drawn-by", title.drawnBy());
        stated.put("checked-by", title.checkedBy());
        List<Fact> lines = new ArrayList<>();
        stated.forEach((key, value) ->
                value.ifPresent(text -> lines.add(new Fact(words.say("title." + key), Plain.text(text, LONGEST), ""))));
        return lines;
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
