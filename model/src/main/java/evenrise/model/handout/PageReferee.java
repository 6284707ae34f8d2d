package evenrise.model.handout;

import evenrise.model.answer.HandRefused;
import evenrise.model.plan.LoadMove;
import evenrise.model.plan.LoadMoveBuilder;
import java.util.Map;
import org.teavm.jso.JSExport;

/** The referee as a page calls it: texts in, texts out. A refusal is an object with {@code refused} alone. */
public final class PageReferee {
    private static Tryout tryout;

    private PageReferee() {}

    /** A compiler begins here; a page begins with {@link #open}. */
    public static void main(String[] arguments) {
        // Nothing is to be done before somebody wants to try.
    }

    /** @param handout as {@link Handout#text} gives it */
    @JSExport
    public static String open(String handout) {
        tryout = new Tryout(Handout.read(handout));
        return state();
    }

    /** @param move as an entry of {@code moves} in the file that goes back */
    @JSExport
    public static String move(String move) {
        try {
            tryout.move(read((Map<?, ?>) PlainJson.read(move)));
        } catch (HandRefused e) {
            return PlainJson.text(Map.of("refused", e.getMessage()));
        }
        return state();
    }

    @JSExport
    public static String undo() {
        tryout.undo();
        return state();
    }

    /** What each free slot of a panel would break or cost. */
    @JSExport
    public static String slots(String load, String panel) {
        return TryoutText.places(tryout.slots(load, panel));
    }

    /** What each free output of a board would. */
    @JSExport
    public static String outputs(String load, String board) {
        return TryoutText.places(tryout.outputs(load, board));
    }

    /** Panels and boards, as they are drawn. */
    @JSExport
    public static String plant() {
        return new TryoutText(tryout).plant();
    }

    /** The file that goes back. */
    @JSExport
    public static String moves() {
        return new TryoutText(tryout).moves();
    }

    @JSExport
    public static String state() {
        return new TryoutText(tryout).state();
    }

    private static LoadMove read(Map<?, ?> entry) {
        LoadMoveBuilder move = LoadMove.builder().load(entry.get("load").toString());
        if (entry.get("panel") != null) {
            move.panel(entry.get("panel").toString()).slot(whole(entry.get("slot")));
        }
        if (entry.get("board") != null) {
            move.board(entry.get("board").toString()).output(whole(entry.get("output")));
        }
        if (entry.get("on_s") != null) {
            move.onSeconds((Double) entry.get("on_s"));
        }
        return move.build();
    }

    private static int whole(Object number) {
        return ((Double) number).intValue();
    }
}
