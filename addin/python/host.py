# Which office and which Python this runs in.
from com.sun.star.beans import PropertyValue
from com.sun.star.uno import Exception as OfficeException


def shell_name():
    return "shell in Python %d.%d.%d" % sys.version_info[:3]


def setting(context, node, name):
    """One value of the office's configuration."""
    argument = PropertyValue()
    argument.Name, argument.Value = "nodepath", node
    provider = context.getValueByName("/singletons/com.sun.star.configuration.theDefaultProvider")
    return provider.createInstanceWithArguments("com.sun.star.configuration.ConfigurationAccess",
                                                (argument,)).getByName(name)


def host_name(context):
    """LibreOffice 7.4.7.2; shell in Python 3.8.16"""
    node = "/org.openoffice.Setup/Product"
    try:
        office = "%s %s" % (setting(context, node, "ooName"), setting(context, node, "ooSetupVersionAboutBox"))
    except OfficeException:
        office = "an office that does not tell its version"
    return "%s; %s" % (office, shell_name())
