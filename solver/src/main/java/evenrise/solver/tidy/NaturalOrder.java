package evenrise.solver.tidy;

import java.util.Comparator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Names as people count: AMP-2 before AMP-10. Numbers of equal value stand by their leading zeros. */
final class NaturalOrder implements Comparator<String> {
    static final NaturalOrder INSTANCE = new NaturalOrder();

    private static final Pattern PART = Pattern.compile("[0-9]+|[^0-9]+");

    private NaturalOrder() {}

    @Override
    public int compare(String left, String right) {
        Matcher lefts = PART.matcher(left);
        Matcher rights = PART.matcher(right);
        boolean hasLeft = lefts.find();
        boolean hasRight = rights.find();
        while (hasLeft && hasRight) {
            int byPart = compareParts(lefts.group(), rights.group());
            if (byPart != 0) {
                return byPart;
            }
            hasLeft = lefts.find();
            hasRight = rights.find();
        }
        return hasLeft == hasRight ? left.compareTo(right) : Boolean.compare(hasLeft, hasRight);
    }

    private static int compareParts(String left, String right) {
        if (!isNumber(left) || !isNumber(right)) {
            return left.compareTo(right);
        }
        String leftDigits = left.replaceFirst("^0+", "");
        String rightDigits = right.replaceFirst("^0+", "");
        int byLength = Integer.compare(leftDigits.length(), rightDigits.length());
        return byLength != 0 ? byLength : leftDigits.compareTo(rightDigits);
    }

    private static boolean isNumber(String part) {
        return part.charAt(0) >= '0' && part.charAt(0) <= '9';
    }
}
