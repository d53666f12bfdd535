package bismar;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What was refused, and why. */
public final class BismarException extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private static final Pattern CODE = Pattern.compile("^\\{\"code\":\"([a-z0-9_]+)\"");

    /** The stable code, meant for programs. */
    public final String code;

    /** The whole error as a JSON object: code, field, message, and where there are any value, allowed and event. */
    public final String told;

    BismarException(String told) {
        super(told);
        Matcher found = CODE.matcher(told);
        this.code = found.find() ? found.group(1) : "";
        this.told = told;
    }
}
