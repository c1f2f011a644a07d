# Completion of channelaudit in fish: the program itself is asked what can stand at the cursor; where it knows nothing, files are offered.
function __channelaudit_knows
    set -l line (commandline -cp | string replace -r '^\s*\S+' '')
    set -g __channelaudit_found (channelaudit "[suggest:"(string length -- "$line")"]" "$line" 2>/dev/null)
    test (count $__channelaudit_found) -gt 0
end
complete -c channelaudit -f -n __channelaudit_knows -a '$__channelaudit_found'
